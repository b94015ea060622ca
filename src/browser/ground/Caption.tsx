import { lastPulse, wholeSecond } from '../currentRun';
import { settings } from '../storage/settings';
import { loudnessWords } from './words';

/** Seconds after which a beep is no longer what is heard. */
const FRESH_S = 2.5;

/** What is heard, in words and as a bar: an aid, shown only to who asked for it. */
export function Caption() {
  if (!settings.value.captions) return null;
  const last = lastPulse.value;
  const heard = last && wholeSecond.value - last.atS < FRESH_S ? last : null;
  const share = heard?.audible ? (heard.flatOut ? 1 : Math.min(0.97, Math.max(0.06, heard.loudnessDb / 50))) : 0;
  return (
    <div class="caption">
      <span aria-live="polite">{loudnessWords(heard)}</span>
      <span class="caption-level" aria-hidden="true">
        <span style={{ width: `${Math.round(share * 100)}%` }} />
      </span>
    </div>
  );
}
