import type { Day } from './day';
import type { BookRecord, NoteRecord, RunRecord, SessionRecord } from './record';

/**
 * The learner's own record: entries that are only ever added, oldest first. Everything else (cards, due list, trends, notes as they stand)
 * is worked out from them, so that two books can be laid together without losing anything.
 */
export type Book = readonly BookRecord[];

const EMPTY: Book = [];
export const emptyBook = (): Book => EMPTY;

/** By time, then by name: the same order whatever the entries came from. */
const earlier = (a: BookRecord, b: BookRecord): number => a.atMs - b.atMs || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/**
 * Both books as one: every entry of either, each once. Laying a book to itself changes nothing, and the order in which books are laid
 * together does not matter. Two entries that share a name but differ can't come from the program; the one whose text is greater is kept.
 */
export function mergedBooks(a: Book, b: Book): Book {
  const byId = new Map<string, BookRecord>();
  for (const record of [...a, ...b]) {
    const known = byId.get(record.id);
    if (!known || textOf(record) > textOf(known)) byId.set(record.id, record);
  }
  return [...byId.values()].sort(earlier);
}

export const withRecord = (book: Book, record: BookRecord): Book => mergedBooks(book, [record]);

/** The same text for the same entry, whatever the order of its fields. */
const textOf = (value: unknown): string =>
  JSON.stringify(value, (_key, part: unknown) =>
    part && typeof part === 'object' && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([x], [y]) => (x < y ? -1 : 1)))
      : part,
  );

const ofKind =
  <K extends BookRecord['kind']>(kind: K) =>
  (book: Book): readonly Extract<BookRecord, { kind: K }>[] =>
    book.filter((record): record is Extract<BookRecord, { kind: K }> => record.kind === kind);

export const sessionsIn = ofKind('session');
export const runsIn = ofKind('run');
export const checksIn = ofKind('check');
export const blindTestsIn = ofKind('blind');

export const sessionsOf = (book: Book, drill: string): readonly SessionRecord[] => sessionsIn(book).filter((one) => one.drill === drill);

/** The notes as they stand, newest first: of each the entry made last, those struck out left away. */
export function notesIn(book: Book): readonly NoteRecord[] {
  const last = new Map<string, NoteRecord>();
  for (const record of ofKind('note')(book)) last.set(record.note, record);
  return [...last.values()].filter(({ text }) => text !== '').reverse();
}

/** A reminder to save the book comes with every so many runs since it was last saved. */
const RUNS_A_BACKUP = 5;

export function runsSinceBackup(book: Book): number {
  const lastBackup = book.reduce((last, record, i) => (record.kind === 'backup' ? i : last), -1);
  return runsIn(book.slice(lastBackup + 1)).length;
}
export const backupIsDue = (book: Book): boolean => runsSinceBackup(book) >= RUNS_A_BACKUP;

/** Days on which something was practised, oldest first, each once. */
export const practiceDays = (book: Book): readonly Day[] => [...new Set(book.filter(isPractice).map(({ day }) => day))].sort();

const isPractice = (record: BookRecord): record is SessionRecord | RunRecord => record.kind === 'session' || record.kind === 'run';
