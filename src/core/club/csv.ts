import type { ClubReport } from './clubReport';
import { practiceScore } from './habitPicture';
import type { Placed } from './rank';
import { wrongDeclarations } from './tableRow';

type Cell = string | number | boolean | null;

/** Begins a formula in a spreadsheet, or hides one behind a tab or a carriage return (the usual list: = + - @ tab CR). */
const BEGINS_FORMULA = /^[=+\-@\t\r]/;

/** A cell by RFC 4180; text that a spreadsheet would take for a formula gets an apostrophe in front and stays text. */
export function csvCell(value: Cell): string {
  if (value === null) return '';
  const text = typeof value === 'string' ? value : String(value);
  const safe = BEGINS_FORMULA.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

const COLUMNS: readonly (readonly [string, (placed: Placed) => Cell])[] = [
  ['name', ({ row }) => row.name],
  ['by', ({ row }) => row.by],
  ['begun at', ({ row }) => row.begunAt],
  ['place by technique', ({ technique }) => technique],
  ['technique', ({ row }) => row.technique],
  ['place by outcome', ({ outcome }) => outcome],
  ['found', ({ row }) => row.outcome?.found ?? null],
  ['time s', ({ row }) => row.outcome?.timeS ?? null],
  ['walked m', ({ row }) => row.outcome?.walkedM ?? null],
  ['wrong declarations', ({ row }) => row.outcome && wrongDeclarations(row.outcome)],
  ['bearing error deg', ({ row }) => row.outcome?.bearingErrorDeg ?? null],
  ['guess error m', ({ row }) => row.outcome?.guessErrorM ?? null],
  ['quiet gain', ({ row }) => row.habits.quietGain],
  ['set then sweep', ({ row }) => row.habits.setThenSweep],
  ['walk and listen', ({ row }) => row.habits.walkAndListen],
  ['clear view', ({ row }) => row.habits.clearView],
  ['keep practising (own statement)', ({ row }) => practiceScore(row.practice)],
  ['replay', ({ row }) => row.mark],
  ['aided', ({ row }) => row.aided],
  ['why no place', ({ why }) => why],
  ['reasons', ({ row }) => row.reasons.join(' ')],
  ['program', ({ row }) => row.program],
  ['fix error m', ({ row }) => row.outcome?.fix?.offM ?? null],
  ['tag in area of fix', ({ row }) => row.outcome?.fix?.within ?? null],
  ['with an instructor', ({ row }) => row.withInstructor ?? false],
];

/** The table as comma-separated values: a header, a line a run, CRLF, UTF-8. Empty cells are not shown, not ranked or unknown. */
export function csvOf(report: ClubReport): string {
  const header = ['exercise', 'exercise words', ...COLUMNS.map(([name]) => name)];
  const lines = report.exercises.flatMap(({ exercise, words, runs }) =>
    runs.map((placed) => [exercise.title, words, ...COLUMNS.map(([, of]) => of(placed))]),
  );
  return [header, ...lines].map((cells) => `${cells.map(csvCell).join(',')}\r\n`).join('');
}
