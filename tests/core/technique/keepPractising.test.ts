import { expect, test } from 'vitest';
import { judgePractice } from '../../../src/core/technique/keepPractising';

const FULL = { daysPractised: 8, longestGapDays: 5, dueShare: 1, largestSkillShare: 0.6 };
const partOf = (name: string, change: Partial<Record<keyof typeof FULL, number | null>>) =>
  judgePractice({ ...FULL, ...change } as typeof FULL).components[name];

test('eight days, no gap above five, all due drills and 60 % on one skill give 100', () => {
  expect(judgePractice(FULL).score).toBe(100);
});

test.each([
  ['days', { daysPractised: 7 }, 87.5],
  ['days', { daysPractised: 12 }, 100],
  ['days', { daysPractised: 0 }, 0],
  ['gap', { longestGapDays: 5 }, 100],
  ['gap', { longestGapDays: 6 }, 800 / 9],
  ['gap', { longestGapDays: 13 }, 100 / 9],
  ['gap', { longestGapDays: 14 }, 0],
  ['due', { dueShare: 0.25 }, 25],
  ['variety', { largestSkillShare: 0.6 }, 100],
  ['variety', { largestSkillShare: 0.7 }, 75],
  ['variety', { largestSkillShare: 1 }, 0],
] as const)('%s: %j gives %f', (name, change, score) => {
  expect(partOf(name, change)).toBeCloseTo(score, 9);
});

test('a quarter of the score rests on each of the four counts', () => {
  for (const change of [{ daysPractised: 0 }, { longestGapDays: 20 }, { dueShare: 0 }, { largestSkillShare: 1 }]) {
    // Without a day of practice variety is not shown either: one part of three is lost.
    const lost = 'daysPractised' in change ? 1 / 3 : 1 / 4;
    expect(judgePractice({ ...FULL, ...change }).score).toBeCloseTo(100 * (1 - lost), 9);
  }
});

test('nothing due is not shown, and without a statement the habit is not shown', () => {
  expect(partOf('due', { dueShare: null })).toBeNull();
  expect(judgePractice({ ...FULL, dueShare: null }).score).toBe(100);
  expect(judgePractice(undefined)).toMatchObject({ score: null, moments: [] });
});

test('all practice on one day costs more than 25 points, and the moments say what to do', () => {
  const crammed = judgePractice({ daysPractised: 1, longestGapDays: 24, dueShare: 0.2, largestSkillShare: 0.5 });
  expect(crammed.score!).toBeLessThan(75);
  const worst = crammed.moments.filter(({ good }) => !good);
  expect(worst).toHaveLength(2);
  expect(worst.every(({ next }) => /^(Practise|Let|Open)/.test(next))).toBe(true);
});
