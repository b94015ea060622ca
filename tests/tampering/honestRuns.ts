import { randomFor } from '../../src/core/random/draw';
import type { Action } from '../../src/core/run/actions';
import { type Exercise, openExercise } from '../../src/core/run/exercise';
import { beginLive, tickOnce } from '../../src/core/run/live';
import { type Recording, recordingOf } from '../../src/core/run/record';
import { replayRun } from '../../src/core/run/replay';
import { runSealOf } from '../../src/core/run/runSeal';
import { TICKS_PER_S } from '../../src/core/run/state';
import { gradeReplay, resultOf } from '../../src/core/technique/grade';
import { smallField } from '../core/club/smallField';

/** One hand: how it turns, walks and sets. Drawn anew for each run, from shy to wild. */
type Hand = {
  readonly by: 'keys' | 'mouse' | 'compass';
  /** Deeds a second. */
  readonly busy: number;
  readonly shakeDeg: number;
  readonly roams: number;
};

const GROUNDS = [
  ['tamper-1', [640, 610]],
  ['tamper-2', [700, 420]],
  ['tamper-3', [480, 720]],
  ['tamper-4', [360, 260]],
  ['tamper-5', [820, 800]],
] as const;
const opened = new Map<number, Exercise>();
const LEAST_S = 30;
const MOST_S = 110;

function groundOf(index: number): Exercise {
  const of = index % GROUNDS.length;
  const [seed, at] = GROUNDS[of]!;
  const exercise = opened.get(of) ?? openExercise(smallField(seed, [...at], MOST_S + 20));
  opened.set(of, exercise);
  return exercise;
}

/** A run by a drawn hand: keys held and let go, a mouse dragged, a phone that trembles; walks, pauses, doubts and corrections. */
export function honestRun(index: number): Recording {
  const exercise = groundOf(index);
  const random = randomFor(`honest-${index}`, 'test');
  const hand: Hand = {
    by: (['keys', 'mouse', 'compass'] as const)[Math.floor(3 * random())]!,
    busy: 0.2 + 3 * random(),
    shakeDeg: 6 * random() ** 2,
    roams: random(),
  };
  const listener = { thresholdDb: Math.round(-6 + 18 * random()) };
  const ticks = Math.round(TICKS_PER_S * (LEAST_S + (MOST_S - LEAST_S) * random()));
  let live = beginLive(exercise, listener);
  while (live.state.tick < ticks && live.state.ending === null) {
    const deeds: Action[] = [];
    if (hand.by === 'compass') deeds.push({ type: 'turn', toDeg: live.state.hold.headingDeg + hand.shakeDeg * (2 * random() - 1) });
    while (random() < hand.busy / TICKS_PER_S) deeds.push(deedOf(hand, exercise, live.state, random));
    live = tickOnce(exercise, live, deeds);
  }
  const about = { name: `Hand ${index}`, by: 'person', aided: random() < 0.2, begunAt: '2026-05-12T19:30:05+02:00' } as const;
  const recording = recordingOf(exercise, live, about);
  const run = replayRun(exercise, live.log, live.state.tick, listener);
  const graded = { ...recording, result: resultOf(gradeReplay({ exercise, run }, recording)) };
  return { ...graded, seal: runSealOf(graded) };
}

type State = ReturnType<typeof beginLive>['state'];

function deedOf(hand: Hand, exercise: Exercise, state: State, random: () => number): Action {
  const { headingDeg } = state.hold;
  const { gainDb } = state.controls;
  const what = random();
  if (what < 0.4) {
    if (hand.by === 'keys') return { type: 'spin', degPerS: random() < 0.4 ? 0 : (random() < 0.5 ? -1 : 1) * (20 + 100 * random()) };
    return { type: 'turn', toDeg: headingDeg + 80 * (random() - 0.5) ** 3 * 8 };
  }
  if (what < 0.65) return { type: 'setGain', gainDb: Math.min(90, Math.max(0, gainDb + Math.round(14 * (random() - 0.5)))) };
  if (what < 0.7) return { type: 'setAttenuator', attenuatorDb: [0, 10, 20, 30][Math.floor(4 * random())]! };
  if (what < 0.8) return { type: 'walk', courseDeg: 360 * random(), paceMPerS: random() < hand.roams ? 1.6 * random() : 0 };
  if (what < 0.85) return { type: 'walkTo', at: { eM: 200 + 600 * random(), nM: 200 + 600 * random() }, paceMPerS: 1.4 };
  if (what < 0.9) return { type: 'roll', toDeg: 90 * Math.round(random()) };
  if (what < 0.92) return { type: 'raise', raised: random() < 0.5 };
  if (what < 0.95) return { type: 'tune', tunedMHz: exercise.scenario.tags[0]!.frequencyMHz - 0.001 + 0.002 * (random() - 0.5) };
  if (what < 0.98) return { type: 'mark' };
  return state.notebook.length > 0 ? { type: 'strikeOut', mark: Math.floor(random() * state.notebook.length) } : { type: 'mark' };
}
