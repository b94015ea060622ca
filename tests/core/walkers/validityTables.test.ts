import { expect, test } from 'vitest';
import type { Scores, StudyRow } from '../../../src/core/walkers/validityRun';
import { doseLines, faultMatrix, findLine, invarianceLines, luckLine, reliabilityLines } from '../../../src/core/walkers/validityTables';

const scores = (changed: Partial<Scores> = {}): Scores => ({
  quietGain: 90,
  setThenSweep: 100,
  walkAndListen: 95,
  clearView: 85,
  keepPractising: 100,
  ...changed,
});
const row = (exercise: string, walker: string, changed: Partial<Scores> = {}, rest: Partial<StudyRow> = {}): StudyRow => ({
  exercise,
  walker,
  found: true,
  timeS: 900,
  boundS: 1_000,
  technique: 92,
  scores: scores(changed),
  ...rest,
});

test('found after the bound is a miss, named with its times', () => {
  const line = findLine('drawn', [row('a', 'steady'), row('b', 'steady', {}, { timeS: 1_200 })]);
  expect([line.within.mean, line.holds, line.misses.length]).toEqual([0.5, false, 1]);
  expect(line.misses[0]).toContain('b: found in 1200 s');
});

test('a fault that takes 40 points of its own habit and 2 of another holds; one that takes 6 of another misses there', () => {
  const walks = (other: number) => [row('a', 'steady'), row('a', 'loud-handed-20', { quietGain: 50, clearView: 85 - other })];
  const cells = (other: number) => faultMatrix(walks(other)).find(({ walker }) => walker === 'loud-handed-20')!.cells;
  expect(cells(2).map(({ holds }) => holds)).toEqual([true, true, true, true, true]);
  expect(cells(6).map(({ holds }) => holds)).toEqual([true, true, true, false, true]);
});

test('a habit that one of the two did not show has not moved', () => {
  const walks = [row('a', 'steady', { clearView: null }), row('a', 'fidgety-4', { setThenSweep: 20, clearView: 10 })];
  const cell = faultMatrix(walks)
    .find(({ walker }) => walker === 'fidgety-4')!
    .cells.find(({ habit }) => habit === 'clearView')!;
  expect([cell.moved!.mean, cell.holds]).toEqual([0, true]);
  expect(faultMatrix(walks).find(({ walker }) => walker === 'low-lying')!.ownWhereShown).toBeNull();
  expect(faultMatrix(walks).find(({ walker }) => walker === 'fidgety-4')!.ownWhereShown!.mean).toBe(-80);
});

test('a larger dose that scores 4 higher than a smaller rises by 2 against its falling fit and misses', () => {
  const walks = ['steady', 'loud-handed-6', 'loud-handed-12', 'loud-handed-20'].map((id, i) =>
    row('a', id, { quietGain: [90, 60, 64, 10][i]! }),
  );
  const line = doseLines(walks)[0]!;
  expect([line.rises, line.holds]).toEqual([2, false]);
});

test('luck counts forced cases alone, and a run that is not ranked as wrong', () => {
  const rows = [
    row('a', 'careless', {}, { technique: 30 }),
    row('b', 'careless', {}, { technique: null }),
    row('c', 'careless', {}, { technique: 90, found: false }),
  ];
  const line = luckLine(
    'bad',
    rows,
    ({ found }) => found,
    (technique) => technique < 50,
  );
  expect([line.right.count, line.right.mean, line.holds]).toEqual([2, 0.5, false]);
});

test('invariance takes the largest difference, and shown once but not again as 100', () => {
  const before = { quietGain: 90, setThenSweep: 100, walkAndListen: 80, clearView: null };
  const lines = invarianceLines([{ exercise: 'a', change: 'turned', before, after: { ...before, quietGain: 90.4, clearView: 50 } }]);
  expect(Math.abs(lines[0]!.largest['quietGain']! - 0.4)).toBeLessThan(1e-9);
  expect([lines[0]!.largest['clearView'], lines[0]!.holds]).toEqual([100, false]);
});

test('walkers that differ by far more than exercises do have a reliability near 1 and need one run', () => {
  const rows = ['a', 'b', 'c', 'd'].flatMap((exercise, i) => [
    row(exercise, 'steady', { quietGain: 90 + i }),
    row(exercise, 'loud-handed-20', { quietGain: 10 + (i % 2) }),
  ]);
  const line = reliabilityLines(rows).find(({ habit }) => habit === 'quietGain')!;
  expect(line.iccOneRun!).toBeGreaterThan(0.99);
  expect([line.runsWanted, line.exercises]).toEqual([1, 4]);
});
