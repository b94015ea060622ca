import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { loadScenario } from '../../../src/core/scenario/load';
import { LESSONS } from '../../../src/core/scenario/schema';
import { agreement, hardness, measured, pairsOfLadders, rankCorrelation, ranksOf, type Walked } from '../../library/order';
import { libraryPage } from '../../library/report';

test('equal values share the mean of their ranks', () => {
  expect(ranksOf([30, 10, 20, 20])).toEqual([4, 1, 2.5, 2.5]);
});

// Spearman's own formula without ties: 1 − 6 Σd² / n(n² − 1), here with d = 1, 1, 1, 1, 0.
test('the rank correlation is that of the formula without ties, 1 in the same order, −1 in the opposite, and none of what is all the same', () => {
  expect(rankCorrelation([1, 2, 3, 4, 5], [20, 10, 40, 30, 50])).toBeCloseTo(1 - (6 * 4) / (5 * 24), 12);
  expect(rankCorrelation([1, 2, 2, 3], [5, 7, 7, 90])).toBeCloseTo(1, 12);
  expect(rankCorrelation([1, 2, 3], [9, 5, 1])).toBeCloseTo(-1, 12);
  expect(rankCorrelation([1, 2, 3], [4, 4, 4])).toBe(null);
});

const walk = (change: Partial<Walked> = {}): Walked => ({
  file: 'x',
  digest: 'x',
  seed: 1,
  found: true,
  timeS: 600,
  errorsDeg: [2, 20],
  misleading: 1,
  ...change,
});
const known = (lesson: string, level: number) => ({ title: `${lesson} ${level}`, lesson, level, limitS: 3_000, parS: 600 });

test('a walk without a find counts as long as the exercise lasts, and errors of all walks go together', () => {
  const one = measured(known('axis', 2), [walk({ timeS: 500 }), walk({ found: false, timeS: 20 }), walk({ timeS: 700 })]);
  expect([one.missedShare, one.timeS, one.errorDeg, one.misleadingShare]).toEqual([1 / 3, 700, 2, 1 / 2]);
});

test('pairs are of one ladder and of different levels, and the one that stands the other way about is told', () => {
  const all = [
    measured(known('axis', 1), [walk({ timeS: 400 })]),
    measured(known('axis', 3), [walk({ timeS: 900, errorsDeg: [30], misleading: 1 })]),
    measured(known('wires', 2), [walk({ timeS: 5, errorsDeg: [1], misleading: 0 })]),
    measured(known('wires', 2), [walk({ timeS: 9, errorsDeg: [1], misleading: 0 })]),
    measured(known('axis', 5), [walk({ timeS: 300, errorsDeg: [1], misleading: 0 })]),
  ];
  const pairs = pairsOfLadders(all);
  expect(pairs).toEqual([
    [0, 1],
    [0, 4],
    [1, 4],
  ]);
  const { agree, against } = agreement(pairs, hardness(all));
  expect([agree, against.length]).toEqual([1, 2]);
  expect(libraryPage(all, LESSONS)).toContain('*axis 3* (3) came out harder than *axis 5* (5)');
});

const shared = readdirSync('scenarios')
  .filter((name) => name.endsWith('.json') && !name.endsWith('schema.json'))
  .map((name) => loadScenario(name, readFileSync(`scenarios/${name}`, 'utf8')));
const page = readFileSync('assets/guide/library.md', 'utf8');

test('the guide’s page has every exercise of the library with the level that it has', () => {
  for (const { lesson, level, title } of shared) expect(page).toContain(`| ${lesson} | ${level} | ${title} |`);
  expect(page.match(/^\| [a-z-]+ \| \d \| /gm)).toHaveLength(shared.length);
});

test('the par of each exercise is what its walks took in the middle, to a minute or 5 %', () => {
  const rows = [...page.matchAll(/^\| [a-z-]+ \| \d \| (.+?) \| \d+ % \| (\d+) min \| (\d+) min \|/gm)];
  expect(rows).toHaveLength(shared.length);
  for (const [, title, time, par] of rows)
    expect(Math.abs(Number(time) - Number(par)), title).toBeLessThanOrEqual(Math.max(1, 0.05 * Number(par)));
});

test('levels agree with the measured order: over all exercises, and in four of five pairs of a ladder', () => {
  const [, correlation, more, same, less] = /^\| hardness \| ([\d.]+) \| (\d+) \| (\d+) \| (\d+) \|$/m.exec(page)!.map(Number);
  expect(correlation).toBeGreaterThan(0.6);
  expect(more! / (more! + same! + less!)).toBeGreaterThanOrEqual(0.8);
  expect(page).toMatch(/^\| time to the find \| 0\.[89]\d \| \d+ \| 0 \| 0 \|$/m);
});
