import { type Ladder, rungOf, valueAt } from './ladder';

/** Where a learner stands on the ladder, how many answers in a row were right since the last move, and whether one was ever wrong. */
export type Staircase = { readonly level: number; readonly streak: number; readonly erred: boolean };

/**
 * Two right answers in a row make it harder, one wrong makes it easier. With a step down of 0.5488 of the step up it settles where the two
 * balance, p² · 0.5488 = 1 − p², that is at 80.35 % right, whatever the size of the steps.
 * @source García-Pérez 1998, Vision Research 38:1861-1881 (values from memory). Equal steps miss their textbook 70.7 % by more the larger they are.
 */
export const DOWN_TO_UP = 0.5488;
const RIGHT_IN_A_ROW = 2;
/** Share of right answers at which it settles. */
export const AIMED_SHARE = Math.sqrt(1 / (1 + DOWN_TO_UP));

export const beginStaircase = (ladder: Ladder): Staircase => ({ level: ladder.first, streak: 0, erred: false });

/** Until the first mistake every right answer goes down by this many steps: somebody good needn't climb down for weeks. */
const FIRST_DESCENT_STEPS = 1.5;

/** The staircase after an answer. `downToUp` other than the default is for comparison only. */
export function answered(ladder: Ladder, { level, streak, erred }: Staircase, right: boolean, downToUp = DOWN_TO_UP): Staircase {
  const rung = rungOf(ladder, level);
  if (!right) return { level: valueAt(ladder, rung + 1), streak: 0, erred: true };
  if (!erred) return { level: valueAt(ladder, rung - FIRST_DESCENT_STEPS), streak: 0, erred };
  if (streak + 1 < RIGHT_IN_A_ROW) return { level, streak: streak + 1, erred };
  return { level: valueAt(ladder, rung - downToUp), streak: 0, erred };
}
