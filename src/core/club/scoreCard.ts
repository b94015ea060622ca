import '../scenario/withoutEval';
import { z } from 'zod';
import { complaints } from '../scenario/complaints';
import { InputFaults } from '../scenario/faults';
import { jsonFrom } from '../scenario/jsonText';
import { bytesOf, deflated, fromLetters, inflated, textOf, toLetters } from '../scenario/packing';
import type { Scenario } from '../scenario/schema';
import { canonicalText, digestOf } from '../scenario/seal';
import type { Grade } from '../technique/grade';

const cardSchema = z.strictObject({
  title: z.string().min(1).max(60),
  /** The first four bytes of the exercise's digest: those that its four words are made of. */
  exercise: z.string().regex(/^[0-9a-f]{8}$/),
  name: z.string().max(60),
  by: z.enum(['person', 'walker']),
  technique: z.number().min(0).max(100).nullable(),
  found: z.boolean(),
  timeS: z.number().min(0).max(14_400),
  aided: z.boolean(),
  /** An instructor's window watched or changed the run. */
  withInstructor: z.literal(true).optional(),
  /** Where a fix was the task: how far it was off, metres; `null` for none. */
  fixOffM: z.number().min(0).max(1e7).nullable().optional(),
  /** The date where and when the run was begun. */
  on: z.iso.date().optional(),
});

/** What one run came to, as the device that played it says: enough to be read aloud, nothing that could be replayed. */
export type ScoreCard = z.infer<typeof cardSchema>;

type AboutRun = {
  readonly name: string;
  readonly by: ScoreCard['by'];
  readonly aided: boolean;
  readonly withInstructor?: boolean;
  readonly begunAt?: string | undefined;
};

export function scoreCardOf(scenario: Scenario, { technique, outcome }: Pick<Grade, 'technique' | 'outcome'>, about: AboutRun): ScoreCard {
  const { name, by, aided, withInstructor, begunAt } = about;
  const { found, timeS, fix } = outcome;
  return {
    title: scenario.title,
    exercise: digestOf(scenario).slice(0, 8),
    name,
    by,
    technique: technique === null ? null : Math.round(technique * 10) / 10,
    found,
    timeS: Math.round(timeS * 10) / 10,
    aided,
    ...(withInstructor ? { withInstructor } : {}),
    ...(fix === undefined ? {} : { fixOffM: fix?.offM ?? null }),
    ...(begunAt ? { on: begunAt.slice(0, 10) } : {}),
  };
}

/** A card in a link begins with this: the kind of packing, so that another may come beside it. */
const PACKING = 'c1.';
/** Longest packed card that is read, and most text that comes out of one. */
const LONGEST = 1_000;
const MOST_BYTES = 1_500;
/** Words that cards have in common. Part of the format, never changed. */
const COMMON =
  '{"aided":true,"fixOffM":null,"on":"2030-12-30","technique":null,"timeS":1,"title":"","aided":false,"by":"person","exercise":"","found":true,"name":"';

/** A card as text for the fragment of a link: letters, digits, `-`, `_` and `.` only. */
export const packedCard = (card: ScoreCard): string => PACKING + toLetters(deflated(bytesOf(canonicalText(card)), bytesOf(COMMON)));

const MEND = 'point the camera at the code again, or copy the whole link';

/** @throws InputFaults for what is no score card of this format, or has a name that misleads the eye */
export function unpackedCard(packed: string, file = 'link'): ScoreCard {
  const refuse = (found: string) => new InputFaults([{ file, path: '', found, mend: MEND }]);
  if (packed.length > LONGEST) throw refuse(`${packed.length} characters, more than the ${LONGEST} of a score card`);
  if (!packed.startsWith(PACKING)) throw refuse('no score card that this version can unpack');
  const bytes = fromLetters(packed.slice(PACKING.length));
  if (!bytes) throw refuse('letters that no score card is packed in');
  const unpacked = inflated(bytes, MOST_BYTES, bytesOf(COMMON));
  if (unpacked === null) throw refuse('a packed score card that is cut off or changed');
  if (unpacked === 'too much') throw refuse('a link that unpacks to more than any score card holds');
  const value = jsonIn(file, textOf(unpacked));
  const parsed = cardSchema.safeParse(value);
  if (!parsed.success) throw new InputFaults(complaints(file, value, parsed.error.issues.slice(0, 8), () => MEND));
  return parsed.data;
}

/** Nobody mends the commas of a link: what is wrong with its text is told with the mend of a link. */
function jsonIn(file: string, text: string): unknown {
  try {
    return jsonFrom(file, text);
  } catch (fault) {
    if (!(fault instanceof InputFaults)) throw fault;
    throw new InputFaults(fault.faults.map((one) => ({ ...one, mend: MEND })));
  }
}
