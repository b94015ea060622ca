import { computed } from '@preact/signals';
import { CloseMark } from '../controls/marks';
import { legsNow, runState } from '../currentRun';
import { toScreen } from '../map/screenFrame';
import { mapSize, mapView } from './mapView';
import { pinNoteShown, pinWords } from './pinNow';

/** The note is so wide, and stands so far beside its pin. */
const WIDTH_PX = 250;
const BESIDE_PX = 18;
/** A map narrower than this has the note at its upper edge. */
const NARROW_PX = 560;

const place = computed(() => {
  const pin = runState.value?.guess;
  const size = mapSize.value;
  if (!pin || size.width < NARROW_PX) return null;
  const { x, y } = toScreen(mapView.value, size, pin);
  const left = x + BESIDE_PX + WIDTH_PX < size.width - 8 ? x + BESIDE_PX : x - BESIDE_PX - WIDTH_PX;
  const inside = (at: number, most: number) => Math.round(Math.min(most, Math.max(8, at)));
  return { left: `${inside(left, size.width - WIDTH_PX - 8)}px`, top: `${inside(y - 40, size.height - 150)}px` };
});

/** Beside the guess pin: what would show that it is wrong. On a phone it goes when one walks on; the notebook keeps it. */
export function PinNote() {
  if (!pinNoteShown.value || pinWords.value === '') return null;
  const walking = (legsNow.value?.paceMPerS ?? 0) > 0;
  const beside = place.value;
  if (!beside && walking) return null;
  return (
    <aside class={beside ? 'pin-note' : 'pin-note pin-note-above'} aria-label="Guess pin" style={beside ?? {}}>
      <p role="status">{pinWords.value}</p>
      <button
        type="button"
        class="plain"
        aria-label="Put the pin’s note away"
        onClick={() => {
          pinNoteShown.value = false;
        }}
      >
        <CloseMark />
      </button>
    </aside>
  );
}

/** The same in the notebook. */
export function PinInNotebook() {
  if (pinWords.value === '') return null;
  return (
    <p class="pin-line">
      <b>Guess pin.</b> {pinWords.value}
    </p>
  );
}
