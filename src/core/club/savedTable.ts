import '../scenario/withoutEval';
import { z } from 'zod';
import { PROGRAM_VERSION } from '../run/record';
import { complaints } from '../scenario/complaints';
import { InputFaults } from '../scenario/faults';
import { LESSONS } from '../scenario/schema';
import { digestOf } from '../scenario/seal';
import { mergeTables } from './mergeTables';
import { type ClubTable, REPLAY_MARKS } from './tableRow';

export const TABLE_FORMAT = 'faintward-table';
export const TABLE_VERSION = 1;

const digest = z.string().regex(/^[0-9a-f]{64}$/);
const score = z.number().min(0).max(100).nullable();
const metres = z.number().min(-10).max(10_010);
const place = z.tuple([metres, metres]);
const seconds = z.number().min(0).max(14_400);
const sentence = z.string().max(400);

const exercise = z.strictObject({
  digest,
  title: z.string().min(1).max(60),
  lesson: z.enum(LESSONS),
  level: z.int().min(1).max(5),
  sizeM: z.number().min(1_000).max(10_000),
  seed: z.string().min(1).max(40),
  timeS: seconds,
  findWithinM: z.number().min(1).max(60),
  startAt: place,
  tags: z
    .array(z.strictObject({ name: z.string().max(40), at: place }))
    .min(1)
    .max(8),
});

const practice = z.strictObject({
  daysPractised: z.int().min(0).max(28),
  longestGapDays: z.int().min(0).max(28),
  dueShare: z.number().min(0).max(1).nullable(),
  largestSkillShare: z.number().min(0).max(1),
});

const outcome = z.strictObject({
  found: z.boolean(),
  ending: z.string().max(20).nullable(),
  timeS: seconds,
  walkedM: z.number().min(0).max(60_000),
  drivenM: z.number().min(0).max(200_000).optional(),
  declarations: z.int().min(0).max(200_000),
  fix: z
    .strictObject({
      offM: z.number().min(0).max(1e7).nullable(),
      within: z.boolean().nullable(),
      areaM: z.number().min(0).max(1e7).nullable(),
    })
    .nullable()
    .optional(),
  atOtherTag: z.int().min(1).max(200_000).optional(),
  bearingErrorDeg: z.number().min(0).max(180).nullable(),
  placeErrorM: z.number().min(0).max(20_000).optional(),
  guessErrorM: z.number().min(0).max(20_000).nullable(),
});

const habits = z.strictObject({ quietGain: score, setThenSweep: score, walkAndListen: score, clearView: score });

const row = z.strictObject({
  run: digest,
  name: z.string().max(60),
  by: z.enum(['person', 'walker']),
  exercise: digest,
  mark: z.enum(REPLAY_MARKS),
  sound: z.boolean(),
  reasons: z.array(sentence).max(20),
  aided: z.boolean(),
  withInstructor: z.boolean().optional(),
  program: z.string().max(20),
  gradedBy: z.string().max(20),
  begunAt: z.iso.datetime({ offset: true }).startsWith('20').max(40).nullable(),
  technique: score,
  habits,
  practice: practice.nullable(),
  outcome: outcome.nullable(),
  advice: z
    .array(
      z.strictObject({
        habit: z.enum(['quietGain', 'setThenSweep', 'walkAndListen', 'clearView']),
        next: sentence,
        weight: z.number().min(0).max(1e6),
      }),
    )
    .max(4),
  track: z.array(z.tuple([seconds, metres, metres])).max(1_000),
});

const savedSchema = z.strictObject({
  format: z.literal(TABLE_FORMAT),
  version: z.literal(TABLE_VERSION),
  program: z.string().max(20),
  anonymous: z.boolean(),
  seal: digest,
  exercises: z.array(exercise).max(1_000),
  rows: z.array(row).max(20_000),
  /** Made of the rows; written for other programs and never read back. */
  report: z.unknown(),
  faults: z.unknown(),
});

/** A table as it is kept: its rows are enough to go on with it, no run has to be replayed again. */
export type SavedTable = Omit<z.infer<typeof savedSchema>, 'exercises' | 'rows' | 'report' | 'faults'> & ClubTable;

/** Names may be set right by hand; anything else breaks the seal. */
const sealOf = ({ exercises, rows }: ClubTable): string => digestOf({ exercises, rows: rows.map((line) => ({ ...line, name: '' })) });

export const savedTableOf = (table: ClubTable, anonymous: boolean): SavedTable => ({
  format: TABLE_FORMAT,
  version: TABLE_VERSION,
  program: PROGRAM_VERSION,
  anonymous,
  seal: sealOf(table),
  exercises: table.exercises,
  rows: table.rows,
});

const MEND = 'use the table as the program wrote it, or make it anew from the run files';

/** @throws InputFaults for anything that is not a whole table of this format as it was written, or one whose names are gone */
export function savedTableFrom(file: string, value: unknown): ClubTable {
  const parsed = savedSchema.safeParse(value);
  if (!parsed.success) throw new InputFaults(complaints(file, value, parsed.error.issues.slice(0, 20), () => MEND));
  const { exercises, rows, seal, anonymous } = parsed.data;
  const fault = (path: string, found: string, mend = MEND) => new InputFaults([{ file, path, found, mend }]);
  if (seal !== sealOf({ exercises, rows })) throw fault('seal', 'the table was changed after it was written');
  if (anonymous) throw fault('anonymous', 'the names are gone, so nobody can be told apart', 'go on with the table that has the names');
  const known = new Set(exercises.map(({ digest: of }) => of));
  const lost = rows.findIndex(({ exercise: of }) => !known.has(of));
  if (lost >= 0) throw fault(`rows.${lost}.exercise`, 'an exercise that the table does not have');
  return mergeTables({ exercises: [], rows: [] }, { exercises, rows });
}
