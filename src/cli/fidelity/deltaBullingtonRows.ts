import { existsSync, readFileSync } from 'node:fs';
import { deltaBullingtonDb } from '../../core/radio/deltaBullington';
import { type CheckRow, rows } from './row';

/**
 * The published profiles may not be handed on with the program: they are read from a folder beside the project where there is one, or
 * from the folder named in FAINTWARD_ITU_PROFILES.
 */
export const PROFILES_FOLDER = process.env['FAINTWARD_ITU_PROFILES'] ?? '../shared/reference/itu-delta-bullington';

/** h1, h2, MHz of the five cases. */
const CASES = [
  [30, 30, 1000],
  [50, 10, 2500],
  [20, 20, 600],
  [40, 50, 200],
  [70, 5, 150],
] as const;
/** Loss in dB of each case for each of the four paths; Earth radius 8500 km, 3e8 m/s. */
const PUBLISHED = [
  [34.44302652, 42.32928281, 36.34606901, 27.69744396, 42.99074274],
  [69.83036947, 90.68232743, 66.46062522, 46.38832061, 51.38547874],
  [17.62040631, 25.1016907, 20.25488733, 10.1899085, 20.73949248],
  [7.870985135, 0, 15.30876397, 6.526730443, 0],
] as const;

function lossDb(path: number, [txHeightM, rxHeightM, frequencyMHz]: (typeof CASES)[number]): number {
  const points = readFileSync(`${PROFILES_FOLDER}/dbull_path${path}.csv`, 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(',').map(Number))
    .filter(([km, m]) => Number.isFinite(km) && Number.isFinite(m));
  const [distancesM, heightsM] = [points.map(([km]) => 1_000 * km!), points.map(([, m]) => m!)];
  // the published values are for horizontal polarization over average land
  return deltaBullingtonDb({ distancesM, heightsM, txHeightM, rxHeightM, frequencyMHz }, { epsR: 22, sigma: 0.003 }, 'h');
}

/** The 20 values of the published validation; none where the profiles are not there. */
export const deltaBullingtonRows: readonly CheckRow[] = existsSync(`${PROFILES_FOLDER}/dbull_path1.csv`)
  ? rows(
      { unit: 'dB', tolerance: 0.01, mark: 'P', source: 'ITU-R P.526, validation of delta-Bullington' },
      PUBLISHED.flatMap((losses, p) =>
        losses.map((db, c): [string, () => number, number] => {
          const [h1, h2, mhz] = CASES[c]!;
          return [`delta-Bullington, path ${p + 1}, ${h1} and ${h2} m, ${mhz} MHz`, () => lossDb(p + 1, CASES[c]!), db];
        }),
      ),
    )
  : [];
