import { normalShare } from '../ear/detection';
import { type Ladder, rungOf, valueAt } from './ladder';
import { AIMED_SHARE } from './staircase';

/** One answer: how hard it was, in the drill's unit, and whether it was right. */
export type Answered = { readonly level: number; readonly right: boolean };

/** Chance of being right by guessing, and spread of the listener's own scale in steps of the ladder. */
type Guesser = { readonly guess: number; readonly spreadSteps: number };

/** Slips of the finger at any level: keeps one wrong answer to an easy trial from ruling the estimate. */
const LAPSE = 0.03;
const GRID_STEPS = 0.25;
/** What is taken for granted before the first answer: the level at which one began, give or take so many steps. */
const PRIOR_STEPS = 5;

/** Chance of a right answer, `z` standard deviates up the listener's own scale. */
function rightShare(z: number, guess: number): number {
  const share = guess + (1 - guess - LAPSE) * normalShare(z);
  return Math.min(1 - 1e-9, Math.max(1e-9, share));
}

/** Standard deviate at which guess + (1 - guess) · share is the share aimed at. */
function zOfAim(guess: number): number {
  const wanted = (AIMED_SHARE - guess) / (1 - guess - LAPSE);
  let [low, high] = [-4, 4];
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    if (normalShare(middle) < wanted) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * The level at which somebody is right four times in five (80.35 %), in the drill's unit: mean of the likelihood of all answers over the
 * ladder, weighted by where one began. The mean of the reversals, the usual estimate, throws away what lies between them.
 */
export function thresholdOf(ladder: Ladder, answers: readonly Answered[], guesser: Guesser): number {
  if (answers.length === 0) return ladder.first;
  const rungs = answers.map(({ level, right }) => ({ rung: rungOf(ladder, level), right }));
  const [low, high] = [rungOf(ladder, ladder.hardest) - 2, rungOf(ladder, ladder.easiest) + 2];
  const start = rungs[0]!.rung;
  const zAtAim = zOfAim(guesser.guess);
  const logs: number[] = [];
  for (let at = low; at <= high; at += GRID_STEPS) {
    let log = -(((at - start) / PRIOR_STEPS) ** 2) / 2;
    for (const { rung, right } of rungs) {
      const share = rightShare((rung - at) / guesser.spreadSteps + zAtAim, guesser.guess);
      log += Math.log(right ? share : 1 - share);
    }
    logs.push(log);
  }
  const top = Math.max(...logs);
  let [sum, weighted] = [0, 0];
  logs.forEach((log, i) => {
    const weight = Math.exp(log - top);
    sum += weight;
    weighted += weight * (low + i * GRID_STEPS);
  });
  return valueAt(ladder, weighted / sum);
}
