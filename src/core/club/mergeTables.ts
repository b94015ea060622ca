import { type ClubTable, personOf, type TableExercise, type TableRow } from './tableRow';

export const EMPTY_TABLE: ClubTable = { exercises: [], rows: [] };

/** One walk of one person is one line, however often its file is dropped. */
const keyOf = (row: TableRow): string => `${row.exercise}/${personOf(row)}/${row.run}/${row.begunAt ?? ''}/${row.sound}/${row.by}`;

/** Both tables in one. Merging in any order, and any file again, gives the same table. */
export function mergeTables(a: ClubTable, b: ClubTable): ClubTable {
  const exercises = new Map<string, TableExercise>();
  for (const exercise of [...a.exercises, ...b.exercises]) exercises.set(exercise.digest, exercise);
  const rows = new Map<string, TableRow>();
  for (const row of [...a.rows, ...b.rows]) {
    const key = keyOf(row);
    const kept = rows.get(key);
    rows.set(key, kept && !replaces(row, kept) ? kept : row);
  }
  return {
    exercises: sortedBy([...exercises.values()], ({ title, digest }) => `${title}/${digest}`),
    rows: sortedBy([...rows.values()], keyOf),
  };
}

/** The later grading counts; of equal ones the choice must not hang on the order they came in. */
function replaces(row: TableRow, kept: TableRow): boolean {
  if (row.gradedBy !== kept.gradedBy) return row.gradedBy > kept.gradedBy;
  return JSON.stringify(row) < JSON.stringify(kept);
}

const sortedBy = <T>(items: readonly T[], key: (item: T) => string): readonly T[] =>
  items
    .map((item) => [key(item), item] as const)
    .sort(([x], [y]) => (x < y ? -1 : Number(x > y)))
    .map(([, item]) => item);
