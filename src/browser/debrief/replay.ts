import { effect, type ReadonlySignal, signal } from '@preact/signals';
import { type Poses, posesEndS, stateAt } from '../../core/debrief/poses';
import type { Exercise } from '../../core/run/exercise';
import type { Live } from '../../core/run/live';
import { backgroundNow, type Pulse } from '../../core/run/pulse';
import type { HabitId, Moment } from '../../core/technique/habit';
import type { SoundOutput } from '../sound/output';

/** Where in the run one looks, seconds; everything in the debrief that has a time follows it. */
export const atS = signal(0);
export const playing = signal(false);
/** How fast it plays; sound goes with the run's own pace only. */
export const pace = signal(1);
export const PACES = [1, 4, 16] as const;

export type ChosenMoment = { readonly habit: HabitId; readonly moment: Moment };
export const chosenMoment = signal<ChosenMoment | null>(null);
/** Number of the bearing that is looked at. */
export const chosenBearing = signal<number | null>(null);

let endS = 0;
/** Counts the jumps: after one the sound starts afresh. */
const jumps = signal(0);

export function beginReplay(poses: Poses): void {
  endS = posesEndS(poses);
  atS.value = endS;
  playing.value = false;
  pace.value = 1;
  chosenMoment.value = null;
  chosenBearing.value = null;
}

export const runEndS = (): number => endS;

export function seek(s: number): void {
  atS.value = Math.min(endS, Math.max(0, s));
  jumps.value++;
}

export const seekBy = (s: number): void => seek(atS.peek() + s);

export function play(): void {
  if (atS.peek() >= endS - 0.05) seek(0);
  playing.value = !playing.peek();
}

/** Looks at a moment: the scrubber jumps to its beginning. The same moment again lets it go. */
export function choose(next: ChosenMoment | null): void {
  chosenBearing.value = null;
  if (!next || chosenMoment.peek()?.moment === next.moment) {
    chosenMoment.value = null;
    return;
  }
  chosenMoment.value = next;
  seek(next.moment.fromS);
}

export function chooseBearing(number: number | null, at = 0): void {
  chosenMoment.value = null;
  chosenBearing.value = chosenBearing.peek() === number ? null : number;
  if (chosenBearing.peek() !== null) seek(at);
}

/** A frame that came so late was a halt of the page, not of the run. */
const MOST_CATCH_UP_S = 0.25;
/** What sounds between the pulses is looked at so often, seconds. */
const SCENE_EVERY_S = 0.1;

/** Plays the run from the scrubber on: time from the screen's frames, beeps and noise from the run's own pulses. @returns stops */
export function runReplay(
  exercise: Exercise,
  poses: Poses,
  { pulses, state: { interventions } }: Pick<Live, 'pulses' | 'state'>,
  sound: ReadonlySignal<SoundOutput | null>,
): () => void {
  const { mainsHz } = exercise.scenario.radio;
  let frame = 0;
  let lastMs = performance.now();
  let sceneAtS = Number.NEGATIVE_INFINITY;
  const onFrame = (nowMs: number) => {
    frame = requestAnimationFrame(onFrame);
    const passedS = Math.min(MOST_CATCH_UP_S, (nowMs - lastMs) / 1_000);
    lastMs = nowMs;
    if (!playing.peek()) return;
    const [from, to] = [atS.peek(), Math.min(endS, atS.peek() + passedS * pace.peek())];
    atS.value = to;
    if (to >= endS) playing.value = false;
    const out = sound.peek();
    if (!out || pace.peek() !== 1) return;
    if (Math.abs(to - sceneAtS) >= SCENE_EVERY_S) {
      sceneAtS = to;
      out.scene({ ...backgroundNow(exercise, { ...stateAt(exercise.scenario, poses, to), interventions }), mainsHz });
    }
    for (const { heard } of between(pulses, from, to)) out.pulse(heard);
  };
  frame = requestAnimationFrame(onFrame);
  const stopSound = effect(() => {
    void jumps.value;
    void pace.value;
    if (playing.value) sceneAtS = Number.NEGATIVE_INFINITY;
    sound.value?.hush();
  });
  return () => {
    cancelAnimationFrame(frame);
    stopSound();
    sound.peek()?.hush();
  };
}

/** The pulses that begin after one time and up to another. They are in time order. */
function between(pulses: readonly Pulse[], fromS: number, toS: number): readonly Pulse[] {
  let [low, high] = [0, pulses.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (pulses[middle]!.heard.atS <= fromS) low = middle + 1;
    else high = middle;
  }
  let end = low;
  while (end < pulses.length && pulses[end]!.heard.atS <= toS) end++;
  return pulses.slice(low, end);
}
