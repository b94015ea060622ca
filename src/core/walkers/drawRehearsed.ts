import { openExercise } from '../run/exercise';
import { type RunState, timeS } from '../run/state';
import type { Scenario } from '../scenario/schema';
import { drawExercise } from './drawExercise';
import { playWalker } from './play';
import { steady } from './steady';

/** Exercises rehearsed before the draw is given up; each has a seed of its own, made of the one asked for. */
export const MOST_REHEARSALS = 6;
const SEED_STEP = 1_000_003;

export type Rehearsal = { readonly found: boolean; readonly timeS: number };
export type RehearsedDraw = { readonly scenario: Scenario; readonly rehearsals: number; readonly rehearsedS: number };

/**
 * An exercise made by chance in which the steady walker has found the tag; `null` where it found it in none of `MOST_REHEARSALS`.
 * `told` hears of every tick of a rehearsal, `ended` of how each ended. @throws RangeError for a level outside 1 to 5
 */
export function drawRehearsed(
  seed: number,
  lesson: Scenario['lesson'],
  level: number,
  told: (scenario: Scenario, state: RunState) => void = () => {},
  ended: (scenario: Scenario, rehearsal: Rehearsal, number: number) => void = () => {},
): RehearsedDraw | null {
  for (let number = 1; number <= MOST_REHEARSALS; number++) {
    const scenario = drawExercise(seed + (number - 1) * SEED_STEP, lesson, level);
    const { state } = playWalker(openExercise(scenario), steady, 1, undefined, (now) => told(scenario, now));
    const rehearsal = { found: state.ending === 'found', timeS: Math.round(timeS(state)) };
    ended(scenario, rehearsal, number);
    if (rehearsal.found) return { scenario, rehearsals: number, rehearsedS: rehearsal.timeS };
  }
  return null;
}
