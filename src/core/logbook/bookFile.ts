import '../scenario/withoutEval';
import { z } from 'zod';
import { complaints } from '../scenario/complaints';
import { InputFaults } from '../scenario/faults';
import { jsonFrom } from '../scenario/jsonText';
import { HABIT_IDS } from '../technique/habit';
import { type Book, mergedBooks } from './book';
import { DAY_PATTERN } from './day';

export const BOOK_FORMAT = 'faintward-logbook';
export const BOOK_VERSION = 1;
const MOST_RECORDS = 200_000;
/** The largest book that is read: some twenty years of daily practice. */
export const BOOK_LIMITS = { characters: 20_000_000, nodes: 20 * MOST_RECORDS, depth: 8 };

const number = z.number().min(-1e6).max(1e6);
const score = z.number().min(0).max(100).nullable();
const share = z.number().min(0).max(1);
const text = (longest: number) => z.string().max(longest);
const entry = {
  id: z.string().min(1).max(60),
  /** Milliseconds since 1970, years 2000 to 2200. */
  atMs: z.number().int().min(946_684_800_000).max(7_258_118_400_000),
  day: z.string().regex(DAY_PATTERN, 'no day'),
};
const bounded = z.strictObject({ value: number, low: number, high: number });

const record = z.discriminatedUnion('kind', [
  z.strictObject({
    ...entry,
    kind: z.literal('session'),
    drill: z.string().min(1).max(40),
    as: z.enum(['practice', 'check']),
    number,
    rightShare: share,
    level: number,
    streak: z.number().int().min(0).max(1),
    erred: z.boolean(),
    seconds: z.number().min(0).max(3_600),
    aided: z.boolean(),
  }),
  z.strictObject({
    ...entry,
    kind: z.literal('run'),
    title: text(80),
    digest: text(64),
    technique: score,
    habits: z.partialRecord(z.enum(HABIT_IDS), score),
    found: z.boolean(),
    minutes: z.number().min(0).max(300),
  }),
  z.strictObject({
    ...entry,
    kind: z.literal('check'),
    device: text(200),
    volumeDb: z.number().min(-60).max(0),
    thresholdDb: z.number().min(-40).max(40),
  }),
  z.strictObject({
    ...entry,
    kind: z.literal('blind'),
    result: z.strictObject({
      places: z.number().int().min(1).max(200),
      wrongSide: z.number().int().min(0).max(200),
      sdDeg: bounded,
      biasDeg: bounded,
    }),
  }),
  z.strictObject({ ...entry, kind: z.literal('note'), note: z.string().min(1).max(60), text: text(4_000) }),
  z.strictObject({ ...entry, kind: z.literal('backup') }),
]);

const bookSchema = z.strictObject({
  format: z.literal(BOOK_FORMAT),
  version: z.literal(BOOK_VERSION),
  records: z.array(record).max(MOST_RECORDS),
});

/** The book as the text of a file. */
export const bookText = (book: Book): string => `${JSON.stringify({ format: BOOK_FORMAT, version: BOOK_VERSION, records: book })}\n`;

/** @throws InputFaults with what is wrong, where, and what to do about it */
export function readBook(file: string, content: string): Book {
  const value = jsonFrom(file, content, BOOK_LIMITS);
  const parsed = bookSchema.safeParse(value);
  if (!parsed.success) throw new InputFaults(complaints(file, value, parsed.error.issues.slice(0, 20), mendFor));
  return mergedBooks(parsed.data.records as Book, []);
}

function mendFor(path: string): string {
  if (path === 'format') return `choose a file that was saved from the Logbook: it begins with "format": "${BOOK_FORMAT}"`;
  if (path === 'version') return `write ${BOOK_VERSION}, or open the file with a newer version of the program`;
  if (/\.day$/.test(path)) return 'give a day as 2031-05-09';
  if (/\.kind$/.test(path)) return 'remove the entry, or open the file with a newer version of the program';
  return 'use the file as the program wrote it';
}
