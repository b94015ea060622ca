import { expect, test } from 'vitest';
import { withoutNames } from '../../../src/core/club/anonymous';
import { clubReport } from '../../../src/core/club/clubReport';
import { makeCollector } from '../../../src/core/club/collect';
import { EMPTY_TABLE, mergeTables } from '../../../src/core/club/mergeTables';
import { savedTableFrom } from '../../../src/core/club/savedTable';
import { tableDocument } from '../../../src/core/club/tableDocument';
import type { ClubTable } from '../../../src/core/club/tableRow';
import { InputFaults } from '../../../src/core/scenario/faults';
import { digestOf } from '../../../src/core/scenario/seal';
import { FELL, handmadeRow, tableOf } from './handmadeTable';

const MOOR = { ...FELL, digest: digestOf('moor'), title: 'Long moor', seed: 'long-moor' };
const tuesday = tableOf(handmadeRow('Rowan'), handmadeRow('Ash', { aided: true }), handmadeRow('', { begunAt: null }));
const thursday: ClubTable = {
  exercises: [MOOR],
  rows: [handmadeRow('Rowan', { exercise: MOOR.digest }), handmadeRow('Bryn', { exercise: MOOR.digest, technique: null })],
};

const saved = (table: ClubTable, anonymous = false): Record<string, unknown> =>
  JSON.parse(JSON.stringify(tableDocument(table, clubReport(table), [], anonymous)));

test('a saved table reads back as the same table, and merging it again adds nothing', () => {
  const read = savedTableFrom('t.json', saved(tuesday));
  expect(read).toEqual(JSON.parse(JSON.stringify(tuesday)));
  expect(mergeTables(read, tuesday)).toEqual(tuesday);
});

test('merging gives the same table in every order, by pairs or all at once', () => {
  const all = [tuesday, thursday, tableOf(handmadeRow('Cade'))];
  const [a, b, c] = all as [ClubTable, ClubTable, ClubTable];
  const one = mergeTables(mergeTables(a, b), c);
  expect(mergeTables(c, mergeTables(b, a))).toEqual(one);
  expect(mergeTables(one, one)).toEqual(one);
  expect(mergeTables(EMPTY_TABLE, one)).toEqual(one);
  expect([one.exercises.length, one.rows.length]).toEqual([2, 6]);
});

test('the line graded by the later program takes the place of the earlier', () => {
  const row = handmadeRow('Rowan');
  const newer = { ...row, gradedBy: '0.2.0', technique: 70 };
  for (const [x, y] of [
    [row, newer],
    [newer, row],
  ] as const)
    expect(mergeTables(tableOf(x), tableOf(y)).rows).toEqual([newer]);
});

const lines = (doc: Record<string, unknown>) => doc['rows'] as readonly object[];
const firstWith = (doc: Record<string, unknown>, change: object) => ({
  ...doc,
  rows: lines(doc).map((row, i) => (i === 0 ? { ...row, ...change } : row)),
});

test.each<[string, (doc: Record<string, unknown>) => object, string]>([
  ['an edited score', (doc) => firstWith(doc, { technique: 99 }), 'seal'],
  ['a line left out', (doc) => ({ ...doc, rows: lines(doc).slice(1) }), 'seal'],
  ['a score of 101', (doc) => firstWith(doc, { technique: 101 }), 'rows.0.technique'],
  ['an unknown key', (doc) => ({ ...doc, colour: 'red' }), 'colour'],
  ['a later version', (doc) => ({ ...doc, version: 2 }), 'version'],
])('%s in a saved table is told at its path', (_what, edit, path) => {
  const doc = edit(saved(tuesday));
  expect(() => savedTableFrom('t.json', doc)).toThrow(InputFaults);
  expect(() => savedTableFrom('t.json', doc)).toThrow(new RegExp(`^t\\.json: ${path}: .* Mend: `));
});

test('a name may be set right by hand in a saved table', () => {
  const doc = firstWith(saved(tuesday), { name: 'Rowena' });
  expect(savedTableFrom('t.json', doc).rows.map(({ name }) => name)).toContain('Rowena');
});

test('a table saved without names can be read by people and not gone on with', () => {
  const hidden = withoutNames(tuesday);
  expect(() => savedTableFrom('t.json', saved(hidden, true))).toThrow(/t\.json: anonymous: the names are gone/);
});

test('one thing that is no run and no table is told, and costs nothing else', () => {
  const collect = makeCollector();
  for (const value of [null, 7, 'x', [], {}, { format: 'faintward-scenario' }]) {
    const { table, faults } = collect('odd.json', value);
    expect([table.rows.length, faults.length > 0, faults[0]!.file]).toEqual([0, true, 'odd.json']);
  }
});
