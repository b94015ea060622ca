import { computed, effect, signal } from '@preact/signals';
import { CLEAREST_NOTE_HZ, pitchHz } from '../../core/receiver/tuning';
import { asListedAndHeard } from '../../core/run/intervention';
import { type Refutation, refutationOf } from '../../core/run/refutation';
import { isHatched } from '../../core/run/ruleOut';
import type { MapPoint } from '../../core/units/frames';
import { controlsNow, live, openRun, runState } from '../currentRun';
import { lengthSaid } from './measures';
import { hatchNow } from './ruleOutNow';
import { bearingText, windOf } from './words';

/** The pin's note lies on the map until it is put away. */
export const pinNoteShown = signal(false);

const pin = computed<MapPoint | null>(() => runState.value?.guess ?? null);
/** Where the walker stands, to 50 m: the note is worked out anew when that changes. */
const aboutHere = computed(() => {
  const at = runState.value?.at;
  return at ? `${Math.round(at.eM / 50)}/${Math.round(at.nM / 50)}` : '';
});
const marksNow = computed(() => runState.value?.notebook ?? []);

/** The tag that the dial is nearest to. */
export const dialTag = computed(() => {
  const tunedMHz = controlsNow.value?.tunedMHz ?? 0;
  const tags = openRun.value?.exercise.scenario.tags ?? [];
  const offHz = (i: number) => Math.abs(pitchHz(tags[i]!.frequencyMHz, tunedMHz) - CLEAREST_NOTE_HZ);
  return tags.reduce((nearest, _, i) => (offHz(i) < offHz(nearest) ? i : nearest), 0);
});

/** What would refute the guess pin; where the walker is not shown it would give the place away. */
const refutation = computed<Refutation | null>(() => {
  const [place, notebook, tag] = [pin.value, marksNow.value, dialTag.value];
  void aboutHere.value;
  const [open, now] = [openRun.value, live.peek()];
  if (!place || !open?.exercise.scenario.aids.ownPosition || !now) return null;
  const { at, hold, tick } = now.state;
  return refutationOf(asListedAndHeard(open.exercise, now.state), { pin: place, at, tag, hold, notebook, tick, listener: now.listener });
});

export const pinWords = computed(() => {
  const [place, found] = [pin.value, refutation.value];
  if (!place || !found) return '';
  if (hatchNow.value && isHatched(hatchNow.value, place)) return 'It lies in ground that you ruled out.';
  return refutationWords(found);
});

/** Higher than here by less than this is as high. */
const HIGHER_M = 6;
/** Less than this away is here. */
const HERE_M = 25;

/** What would refute it, in a sentence or two. */
export function refutationWords(found: Refutation): string {
  if (found.kind === 'out-of-view') return 'No ground near you looks onto it. Walk closer before you believe it.';
  if (found.kind === 'too-far') {
    return `Bearing ${found.bearing} was taken at gain ${found.heardNetDb}. From there the pin would need ${found.neededDb > 90 ? 'more than there is' : found.neededDb}, even in a clear view: too far.`;
  }
  const higher = found.higherM > HIGHER_M ? 'the higher ground ' : found.higherM < -HIGHER_M ? 'the lower ground ' : 'a place ';
  const where = found.awayM < HERE_M ? 'from here' : `from ${higher}${lengthSaid(found.awayM)} ${windOf(found.awayDeg)}`;
  return `If it lay there, you would hear it at gain ${found.gainDb} on ${bearingText(found.headingDeg)} ${where}, flat or upright. Hear nothing there both ways, and it is wrong.`;
}

/** A new pin brings its note; pin and run gone, it goes. @returns stops */
export const tellOfPins = (): (() => void) => {
  let before = pin.peek();
  return effect(() => {
    const now = pin.value;
    if (now?.eM === before?.eM && now?.nM === before?.nM) return;
    before = now;
    pinNoteShown.value = now !== null;
  });
};
