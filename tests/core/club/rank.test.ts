import { expect, test } from 'vitest';
import { placedRuns } from '../../../src/core/club/rank';
import type { TableRow } from '../../../src/core/club/tableRow';
import { FELL, handmadeRow, tableOf } from './handmadeTable';

const placed = (...rows: readonly TableRow[]) => placedRuns(tableOf(...rows), FELL.digest);
const by = (what: 'technique' | 'outcome', ...rows: readonly TableRow[]) =>
  Object.fromEntries(placed(...rows).map((run) => [run.row.name, run[what]]));

test('by technique the higher score is before, and equal scores share a place: 1, 2, 2, 4', () => {
  const rows = [70, 90, 80, 80].map((technique, i) => handmadeRow('abcd'[i]!, { technique }));
  expect(by('technique', ...rows)).toEqual({ b: 1, c: 2, d: 2, a: 4 });
  expect(placed(...rows).map(({ row }) => row.name)).toEqual(['b', 'c', 'd', 'a']);
});

test('a run that showed fewer than three habits takes no place by technique, keeps the one by outcome, and says why', () => {
  const shy = handmadeRow('shy', { technique: null, outcome: { timeS: 100 } });
  const runs = placed(shy, handmadeRow('bold', { technique: 20 }));
  expect(runs.map(({ row, technique, outcome }) => [row.name, technique, outcome])).toEqual([
    ['bold', 1, 2],
    ['shy', null, 1],
  ]);
  expect(runs[1]!.why).toContain('fewer than three habits');
});

test('by outcome the sooner find is before, to the second that is shown; then fewer wrong declarations', () => {
  const rows = [
    handmadeRow('late', { outcome: { timeS: 700 } }),
    handmadeRow('same', { outcome: { timeS: 600.4 } }),
    handmadeRow('equal', { outcome: { timeS: 600 } }),
    handmadeRow('guesser', { outcome: { timeS: 600, declarations: 3 } }),
  ];
  expect(by('outcome', ...rows)).toEqual({ same: 1, equal: 1, guesser: 3, late: 4 });
});

test('who did not find has no place by outcome, however near the pin was', () => {
  const lost = { found: false, ending: 'out-of-time', guessErrorM: 3 };
  expect(by('outcome', handmadeRow('lost', { outcome: lost }), handmadeRow('found', { outcome: { timeS: 2_699 } }))).toEqual({
    found: 1,
    lost: null,
  });
});

test('a run that does not replay takes no place and moves nobody down', () => {
  const cheat = handmadeRow('cheat', { sound: false, mark: 'does not replay', technique: null, outcome: null });
  const runs = placed(cheat, handmadeRow('honest'));
  expect(runs.map(({ row, technique, why }) => [row.name, technique, why])).toEqual([
    ['honest', 1, ''],
    ['cheat', null, 'does not replay'],
  ]);
});

test('a run of another version that replays here takes its place', () => {
  expect(by('technique', handmadeRow('old', { mark: 'other version', program: '0.0.9' }))).toEqual({ old: 1 });
});

test('only the first attempt of a person counts, by date, whatever the case and spaces of the name', () => {
  const first = handmadeRow('Rowan ', { begunAt: '2026-05-12T18:00:00Z', technique: 60 });
  const again = handmadeRow('rowan', { begunAt: '2026-05-12T19:00:00+02:00', technique: 95 });
  const runs = placed(first, again);
  // 19:00 two hours east of Greenwich is before 18:00 in Greenwich.
  expect(runs.map(({ row, technique }) => [row.technique, technique])).toEqual([
    [95, 1],
    [60, null],
  ]);
  expect(runs[1]!.why).toContain('later attempt');
});

test('of two runs without a date the weaker one counts, so that leaving the date out gains nothing', () => {
  const runs = placed(
    handmadeRow('Rowan', { begunAt: null, technique: 95, outcome: { timeS: 300 } }),
    handmadeRow('Rowan', { begunAt: null, technique: 60, outcome: { timeS: 900 } }),
  );
  expect(runs[0]!.row.technique).toBe(60);
});

test('runs without a name are different people', () => {
  const runs = placed(handmadeRow('', { technique: 50 }), handmadeRow('', { technique: 60 }));
  expect(runs.map(({ technique }) => technique)).toEqual([1, 2]);
});

test('one walk under two names takes no place under either', () => {
  const walk = handmadeRow('Rowan');
  const runs = placed(walk, { ...walk, name: 'Ash' }, handmadeRow('Bryn', { technique: 10 }));
  expect(runs.map(({ row, technique }) => [row.name, technique])).toEqual([
    ['Bryn', 1],
    ['Ash', null],
    ['Rowan', null],
  ]);
  expect(runs[1]!.why).toContain('the same walk as Rowan');
});

test('a walker among people is for comparison and takes no place; among walkers it does', () => {
  const steady = handmadeRow('steady', { by: 'walker', technique: 99 });
  expect(by('technique', steady, handmadeRow('Rowan'))).toEqual({ Rowan: 1, steady: null });
  expect(by('technique', steady, handmadeRow('deaf', { by: 'walker', technique: 9 }))).toEqual({ steady: 1, deaf: 2 });
});

test('an aided run is ranked with the others', () => {
  expect(by('technique', handmadeRow('Rowan', { aided: true, technique: 90 }), handmadeRow('Ash'))).toEqual({ Rowan: 1, Ash: 2 });
});
