import { z } from 'zod';
import { complaints } from './complaints';
import { type Fault, InputFaults } from './faults';
import { jsonFrom } from './jsonText';

const pathSchema = z.strictObject({
  frequencyMHz: z.number().min(10).max(3_000),
  polarization: z.enum(['v', 'h']),
  txHeightM: z.number().min(0.05).max(500),
  rxHeightM: z.number().min(0.05).max(500),
  distancesM: z.array(z.number().min(0).max(200_000)).min(2).max(5_000),
  heightsM: z.array(z.number().min(-500).max(9_000)).min(2).max(5_000),
  ground: z.strictObject({ epsR: z.number().min(1).max(100), sigma: z.number().min(0).max(10) }),
  earthRadiusM: z.number().min(1e6).max(1e12).optional(),
});

/** A profile to compute: heights above sea level at distances from the transmitter, both in metres. */
export type PathFile = z.infer<typeof pathSchema>;

const MENDS: Readonly<Record<string, string>> = {
  frequencyMHz: 'give megahertz between 10 and 3000',
  polarization: 'give "v" or "h"',
  txHeightM: 'give metres above ground between 0.05 and 500',
  rxHeightM: 'give metres above ground between 0.05 and 500',
  distancesM: 'give 2 to 5000 distances in metres, rising from 0',
  heightsM: 'give as many heights in metres as there are distances',
  ground: 'give epsR from 1 to 100 and sigma from 0 to 10 S/m',
  earthRadiusM: 'give metres, 8500000 for the usual effective radius',
};

const mendFor = (path: string): string =>
  MENDS[path.split('.').find((part) => MENDS[part]) ?? ''] ??
  'give frequencyMHz, polarization, txHeightM, rxHeightM, distancesM, heightsM and ground';

/** One profile or a list. @throws InputFaults naming the item and field */
export function loadPaths(file: string, text: string): { readonly list: boolean; readonly paths: readonly PathFile[] } {
  const value = jsonFrom(file, text, { characters: 64_000_000, nodes: 8_000_000, depth: 8 });
  const list = Array.isArray(value);
  const parsed = (list ? z.array(pathSchema).min(1) : pathSchema).safeParse(value);
  if (!parsed.success) throw new InputFaults(complaints(file, value, parsed.error.issues, mendFor));
  const paths = Array.isArray(parsed.data) ? parsed.data : [parsed.data];
  const faults = paths.flatMap((path, i) => disorder(file, list ? `${i}.` : '', path));
  if (faults.length > 0) throw new InputFaults(faults);
  return { list, paths };
}

function disorder(file: string, prefix: string, { distancesM, heightsM }: PathFile): readonly Fault[] {
  if (distancesM.length !== heightsM.length) {
    return [
      { file, path: `${prefix}heightsM`, found: `${heightsM.length} heights for ${distancesM.length} distances`, mend: MENDS['heightsM']! },
    ];
  }
  const at = distancesM.findIndex((m, i) => i > 0 && m <= distancesM[i - 1]!);
  if (at < 0) return [];
  return [
    {
      file,
      path: `${prefix}distancesM.${at}`,
      found: `${distancesM[at]} after ${distancesM[at - 1]}`,
      mend: 'let distances rise from one to the next',
    },
  ];
}
