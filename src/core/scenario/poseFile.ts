import { z } from 'zod';
import { complaints } from './complaints';
import { InputFaults } from './faults';
import { jsonFrom } from './jsonText';

const poseSchema = z.strictObject({
  atS: z.number().min(0).max(14_400),
  e: z.number().min(0).max(10_000),
  n: z.number().min(0).max(10_000),
  headingDeg: z.number().min(-3_600).max(3_600),
  rollDeg: z.number().min(0).max(90),
  gainDb: z.number().min(0).max(90),
  attenuatorDb: z.union([z.literal(0), z.literal(10), z.literal(20), z.literal(30)]),
});

/** Where the listener is, how the antenna is held and what is set, from a time on. */
export type PoseRow = z.infer<typeof poseSchema>;

const MEND = 'give a list of {atS, e, n, headingDeg, rollDeg, gainDb, attenuatorDb} with rising atS';

/** @throws InputFaults naming row and field */
export function loadPoses(file: string, text: string): readonly PoseRow[] {
  const value = jsonFrom(file, text, { nodes: 900_000, depth: 8 });
  const parsed = z.array(poseSchema).min(1).max(100_000).safeParse(value);
  if (!parsed.success) throw new InputFaults(complaints(file, value, parsed.error.issues, () => MEND));
  const at = parsed.data.findIndex(({ atS }, i) => i > 0 && atS <= parsed.data[i - 1]!.atS);
  if (at >= 0)
    throw new InputFaults([{ file, path: `${at}.atS`, found: `${parsed.data[at]!.atS} s, not after the row before`, mend: MEND }]);
  return parsed.data;
}
