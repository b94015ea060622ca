import { z } from 'zod';
import { complaints } from './complaints';
import { InputFaults } from './faults';
import { jsonFrom } from './jsonText';

/** Largest text of stations and bearings that is read, characters. */
const LARGEST_FIX_TEXT = 20_000_000;
const MOST_STATIONS = 200;
const MOST_FIXES = 20_000;

/** Any national grid fits within ten million metres; ten times that is a slip of the keyboard. */
const metres = z.number().min(-1e8).max(1e8);

const fixInput = z
  .strictObject({
    stations: z.array(z.tuple([metres, metres])).max(MOST_STATIONS),
    bearingsDeg: z.array(z.number().min(-360).max(360)).max(MOST_STATIONS),
    method: z.enum(['ml', 'huber', 'andrews']).optional(),
  })
  .superRefine(({ stations, bearingsDeg }, context) => {
    if (stations.length === bearingsDeg.length) return;
    const message = `${bearingsDeg.length} bearings for ${stations.length} stations`;
    context.addIssue({ code: 'custom', path: ['bearingsDeg'], message });
  });

/** Stations and bearings as a file gives them: east and north in metres, degrees clockwise from grid north. */
export type FixFile = {
  readonly stations: readonly (readonly [number, number])[];
  readonly bearingsDeg: readonly number[];
  readonly method?: 'ml' | 'huber' | 'andrews';
};

/**
 * One set of stations and bearings, or a list of sets, from the text of a file.
 * @throws InputFaults with every fault found
 */
export function loadFixFile(file: string, text: string): FixFile | readonly FixFile[] {
  const value = jsonFrom(file, text, { characters: LARGEST_FIX_TEXT, nodes: 4_000_000, depth: 8 });
  const parsed = (Array.isArray(value) ? z.array(fixInput).max(MOST_FIXES) : fixInput).safeParse(value);
  if (!parsed.success) throw new InputFaults(complaints(file, value, parsed.error.issues, mendFor));
  return Array.isArray(parsed.data) ? parsed.data.map(withoutGaps) : withoutGaps(parsed.data);
}

/** An absent method is absent, not undefined. */
const withoutGaps = ({ stations, bearingsDeg, method }: z.infer<typeof fixInput>): FixFile => ({
  stations,
  bearingsDeg,
  ...(method && { method }),
});

function mendFor(path: string): string {
  if (/(^|\.)stations\.\d+/.test(path)) return 'give each station as [east, north] in metres, within 100000000 of the origin';
  if (/(^|\.)stations$/.test(path)) return `list up to ${MOST_STATIONS} stations as [[east, north], ...] in metres`;
  if (/(^|\.)bearingsDeg\.\d+$/.test(path)) return 'give degrees clockwise from north, between -360 and 360';
  if (/(^|\.)bearingsDeg$/.test(path)) return 'list one bearing for each station, in degrees clockwise from north';
  if (/(^|\.)method$/.test(path)) return 'write "ml", "huber" or "andrews", or leave it out for "ml"';
  return 'give {"stations": [[east, north], ...], "bearingsDeg": [...]} or a list of those';
}
