import { expect, test } from 'vitest';
import { mergedBooks } from '../../../src/core/logbook/book';
import { practiceOf } from '../../../src/core/logbook/practice';
import { LEAST_NUMBERS, trendOf } from '../../../src/core/logbook/trend';
import { randomFor } from '../../../src/core/random/draw';
import { judgePractice } from '../../../src/core/technique/keepPractising';
import { onDay, runOn, sessionOn } from './handmadeBook';

const DRILLS = ['a', 'b', 'c'];
const book = (...days: readonly (readonly [number, string])[]) =>
  mergedBooks(
    days.map(([day, drill]) => sessionOn(onDay(day), drill)),
    [],
  );

test('days of the last 28, each once, runs among them, older ones left out', () => {
  const all = mergedBooks(book([0, 'a'], [30, 'a'], [30, 'b'], [33, 'a']), [runOn(onDay(40))]);
  expect(practiceOf(all, DRILLS, onDay(40)).daysPractised).toBe(3);
});

test.each([
  [
    'between two days',
    [
      [0, 'a'],
      [9, 'b'],
      [12, 'a'],
    ],
    13,
    9,
  ],
  [
    'since the last one',
    [
      [0, 'a'],
      [2, 'b'],
    ],
    20,
    18,
  ],
  ['never more than the window', [[0, 'a']], 200, 27],
  [
    'from the window’s beginning where practice is older',
    [
      [0, 'a'],
      [60, 'a'],
    ],
    61,
    26,
  ],
] as const)('longest gap %s', (_what, days, today, gap) => {
  expect(practiceOf(book(...days), DRILLS, onDay(today)).longestGapDays).toBe(gap);
});

test('due drills: done within two days counts, later does not, still open within two days is left out', () => {
  // Good on day 0: due on day 3.
  const share = (days: readonly (readonly [number, string])[], today: number) => practiceOf(book(...days), DRILLS, onDay(today)).dueShare;
  expect(share([[0, 'a']], 5)).toBeNull();
  expect(share([[0, 'a']], 6)).toBe(0);
  expect(
    share(
      [
        [0, 'a'],
        [5, 'a'],
      ],
      6,
    ),
  ).toBe(1);
  expect(
    share(
      [
        [0, 'a'],
        [6, 'a'],
      ],
      6,
    ),
  ).toBe(0);
  expect(
    share(
      [
        [0, 'a'],
        [3, 'a'],
        [0, 'b'],
      ],
      6,
    ),
  ).toBe(0.5);
});

test('largest share of minutes on one drill', () => {
  const all = [sessionOn(onDay(0), 'a', { seconds: 90 }), sessionOn(onDay(0), 'b', { seconds: 30 })];
  expect(practiceOf(all, DRILLS, onDay(0)).largestSkillShare).toBe(0.75);
  expect(practiceOf([], DRILLS, onDay(0))).toEqual({ daysPractised: 0, longestGapDays: 27, dueShare: null, largestSkillShare: 0 });
});

test('four weeks of practice four times a week give the fifth habit full marks, one day a month does not', () => {
  let steady = mergedBooks([], []);
  for (let day = 0; day < 28; day++) {
    if (![0, 2, 4, 5].includes(day % 7)) continue;
    steady = mergedBooks(
      steady,
      DRILLS.map((drill) => sessionOn(onDay(day), drill)),
    );
  }
  expect(judgePractice(practiceOf(steady, DRILLS, onDay(27))).score).toBeGreaterThan(95);
  const crammed = mergedBooks(
    Array.from({ length: 12 }, () => sessionOn(onDay(0), 'a')),
    [],
  );
  expect(judgePractice(practiceOf(crammed, DRILLS, onDay(27))).score).toBeLessThan(20);
});

const normal = (random: () => number) => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

test('standard error of measurement is found from a row of numbers, progress or not', () => {
  for (const slope of [0, -0.1]) {
    const random = randomFor(`sem-${slope}`, 'test');
    const numbers = Array.from({ length: 400 }, (_, i) => 50 + slope * i + 2 * normal(random));
    const trend = trendOf(numbers, true)!;
    expect(Math.abs(trend.sem - 2)).toBeLessThan(0.2);
    expect(trend.detectable).toBeCloseTo(1.96 * Math.SQRT2 * trend.sem, 9);
  }
});

test('noise alone is called a change in at most 10 % of rows of twelve, a fall by six standard errors in 90 %', () => {
  const called = (fall: number) => {
    let count = 0;
    for (let i = 0; i < 500; i++) {
      const random = randomFor(`noise-${fall}-${i}`, 'test');
      const numbers = Array.from({ length: 12 }, (_, k) => 20 - (fall * k) / 11 + normal(random));
      if (trendOf(numbers, true)!.verdict !== 'within chance') count++;
    }
    return count / 500;
  };
  expect(called(0)).toBeLessThan(0.1);
  expect(called(6)).toBeGreaterThan(0.9);
});

test('less is better for errors, more for grades; too few numbers say nothing', () => {
  const falling = [9, 9.1, 9, 5, 3, 3.1, 3];
  expect(trendOf(falling, true)?.verdict).toBe('better');
  expect(trendOf(falling, false)?.verdict).toBe('worse');
  expect(trendOf(falling.slice(0, LEAST_NUMBERS - 1), true)).toBeNull();
});
