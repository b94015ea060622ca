import { expect, test } from 'vitest';
import type { Ladder } from '../../../src/core/drills/ladder';
import { rungOf, valueAt } from '../../../src/core/drills/ladder';
import { AIMED_SHARE, answered, beginStaircase, DOWN_TO_UP, type Staircase } from '../../../src/core/drills/staircase';
import { type Answered, thresholdOf } from '../../../src/core/drills/threshold';
import { normalShare } from '../../../src/core/ear/detection';
import { randomFor } from '../../../src/core/random/draw';

const LADDER: Ladder = { hardest: -10, easiest: 20, first: 8, step: 1, ratio: false };
/** A listener who guesses between two, right half the time at levels far too small: 75 % at `middle`. */
const rightAt = (level: number, middle: number, spread: number) => 0.5 + 0.5 * normalShare((level - middle) / spread);

type Walk = { readonly middle: number; readonly spread: number; readonly trials: number; readonly seed: string };
function walk(ladder: Ladder, { middle, spread, trials, seed }: Walk, downToUp = DOWN_TO_UP): Answered[] {
  const random = randomFor(seed, 'test');
  let stair: Staircase = beginStaircase(ladder);
  return Array.from({ length: trials }, () => {
    const given = { level: stair.level, right: random() < rightAt(stair.level, middle, spread) };
    stair = answered(ladder, stair, given.right, downToUp);
    return given;
  });
}

/** Share right at the mean of the levels at which the walk turned. */
function shareAtReversals(stepsOverSpread: number, downToUp: number): number {
  const ladder = { ...LADDER, step: stepsOverSpread };
  const answers = walk(ladder, { middle: 0, spread: 1, trials: 30_000, seed: `reversals-${stepsOverSpread}` }, downToUp);
  const levels = answers.map(({ level }) => level).filter((level, i, all) => i === 0 || level !== all[i - 1]);
  const turns = levels.filter((level, i) => i > 10 && i + 1 < levels.length && level - levels[i - 1]! > 0 !== levels[i + 1]! - level > 0);
  return rightAt(turns.reduce((sum, level) => sum + level, 0) / turns.length, 0, 1);
}

test('the share aimed at is 80.35 % (García-Pérez 1998, value from memory)', () => {
  expect(AIMED_SHARE).toBeCloseTo(0.8035, 4);
});

test.each([0.5, 1, 2])('steps up of %f spreads, 0.5488 as far down: settles within 1.5 points of 80.35 %', (steps) => {
  expect(Math.abs(shareAtReversals(steps, DOWN_TO_UP) - 0.8035)).toBeLessThan(0.015);
});

test('equal steps miss the textbook 70.7 %, by more the larger they are', () => {
  const missed = [0.5, 1, 2].map((steps) => Math.abs(shareAtReversals(steps, 1) - Math.SQRT1_2));
  expect(missed[0]).toBeGreaterThan(0.01);
  expect(missed[1]).toBeGreaterThan(missed[0]!);
  expect(missed[2]).toBeGreaterThan(missed[1]! + 0.03);
});

test.each([0.7, 1, 1.3])(
  'a listener of spread %f dB: threshold found within 60 trials, SD at most 0.5 dB, bias at most 0.25 dB',
  (spread) => {
    for (const middle of [1, 3, 6]) {
      const truth = middle + spread * 0.2715; // 0.5 + 0.5 Φ(z) = 0.8035 at z = 0.2715
      const found = Array.from({ length: 80 }, (_, i) =>
        thresholdOf(LADDER, walk(LADDER, { middle, spread, trials: 60, seed: `found-${spread}-${middle}-${i}` }), {
          guess: 0.5,
          spreadSteps: spread,
        }),
      );
      const mean = found.reduce((sum, value) => sum + value, 0) / found.length;
      const sd = Math.sqrt(found.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (found.length - 1));
      expect([middle, sd <= 0.5, sd]).toEqual([middle, true, sd]);
      expect(Math.abs(mean - truth)).toBeLessThan(0.25);
    }
  },
);

test('two right go down, one right waits, one wrong goes up and forgets the row; before the first mistake every right one goes down', () => {
  const right = (stair: Staircase) => answered(LADDER, stair, true);
  const start: Staircase = { level: 8, streak: 0, erred: true };
  expect(right(start)).toEqual({ level: 8, streak: 1, erred: true });
  expect(right(right(start))).toEqual({ level: 8 - 0.5488, streak: 0, erred: true });
  expect(answered(LADDER, right(start), false)).toEqual({ level: 9, streak: 0, erred: true });
  expect(right(beginStaircase(LADDER))).toEqual({ level: 6.5, streak: 0, erred: false });
});

test('a ladder of ratios: steps multiply, both ends hold, value and rung are inverse', () => {
  const ladder: Ladder = { hardest: 1, easiest: 30, first: 12, step: 1.5, ratio: true };
  expect(answered(ladder, { level: 12, streak: 0, erred: true }, false).level).toBeCloseTo(18, 9);
  expect(answered(ladder, { level: 28, streak: 0, erred: true }, false).level).toBe(30);
  expect(answered(ladder, { level: 1.1, streak: 1, erred: true }, true).level).toBe(1);
  for (const value of [1, 2.5, 12, 30]) expect(valueAt(ladder, rungOf(ladder, value))).toBeCloseTo(value, 9);
});
