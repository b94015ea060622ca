import { type Exercise, openExercise } from '../run/exercise';
import { recordingFrom } from '../run/record';
import { type Fault, InputFaults } from '../scenario/faults';
import { EMPTY_TABLE, mergeTables } from './mergeTables';
import { rowOf, tableExerciseOf } from './rowOf';
import { savedTableFrom, TABLE_FORMAT } from './savedTable';
import type { ClubTable } from './tableRow';

/** What one document brings to the table: a table of one run or of many, or its faults. */
export type Collected = { readonly table: ClubTable; readonly faults: readonly Fault[] };

/** Grounds that stay open at a time: a club evening has few exercises, a season's files come in any order. */
const KEPT_OPEN = 4;

/**
 * Takes documents one at a time: run files are replayed, saved tables are taken in. Nothing is thrown for a document that is
 * wrong or whose run breaks off: its faults come back and the next one goes on.
 */
export function makeCollector(): (file: string, value: unknown) => Collected {
  const open = new Map<string, Exercise>();
  return (file, value) => {
    try {
      if (formatOf(value) === TABLE_FORMAT) return { table: savedTableFrom(file, value), faults: [] };
      const recording = recordingFrom(file, value);
      const exercise = open.get(recording.digest) ?? openExercise(recording.scenario);
      open.delete(recording.digest);
      open.set(recording.digest, exercise); // newest last
      if (open.size > KEPT_OPEN) open.delete(open.keys().next().value!);
      const row = rowOf(exercise, recording);
      return { table: { exercises: [tableExerciseOf(recording.scenario, recording.digest)], rows: [row] }, faults: [] };
    } catch (error) {
      if (error instanceof InputFaults) return { table: EMPTY_TABLE, faults: error.faults };
      const found = `a run that can't be replayed: ${error instanceof Error ? error.message : String(error)}`;
      return { table: EMPTY_TABLE, faults: [{ file, path: '', found, mend: 'use the run file as the program wrote it' }] };
    }
  };
}

const formatOf = (value: unknown): unknown =>
  typeof value === 'object' && value !== null ? (value as { readonly format?: unknown }).format : undefined;

/** All that came in as one table, and all faults. */
export const collectedTable = (all: readonly Collected[]): Collected => ({
  // Merged in pairs of halves: one by one, a thousand files would be sorted a thousand times.
  table: mergedHalves(all.map(({ table }) => table)),
  faults: all.flatMap(({ faults }) => faults),
});

function mergedHalves(tables: readonly ClubTable[]): ClubTable {
  if (tables.length <= 1) return mergeTables(EMPTY_TABLE, tables[0] ?? EMPTY_TABLE);
  const middle = tables.length >> 1;
  return mergeTables(mergedHalves(tables.slice(0, middle)), mergedHalves(tables.slice(middle)));
}
