import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { propagationRows } from '../../src/cli/fidelity/propagationRows';
import { deltaBullingtonDb } from '../../src/core/radio/deltaBullington';

describe('propagation against published and independent values', () => {
  test.each(
    propagationRows.map(
      (row) => [`${row.claim} is ${row.reference} ${row.unit} within ${row.tolerance} (${row.mark}: ${row.source})`, row] as const,
    ),
  )('%s', (_title, row) => {
    expect(Math.abs(row.value() - row.reference)).toBeLessThanOrEqual(row.tolerance);
  });
});

// The ITU profiles are read from a folder beside the project where present, or from the folder named in FAINTWARD_ITU_PROFILES.
const folder = process.env['FAINTWARD_ITU_PROFILES'] ?? '../shared/reference/itu-delta-bullington';
const present = existsSync(`${folder}/dbull_path1.csv`);
if (!present) console.info(`the ITU profiles are not at ${folder}: delta-Bullington is not compared with its published validation here`);

/** h1, h2, MHz of the five cases; loss in dB for each of the four paths. Published with ITU-R P.526; Earth radius 8500 km, 3e8 m/s. */
const CASES = [
  [30, 30, 1000],
  [50, 10, 2500],
  [20, 20, 600],
  [40, 50, 200],
  [70, 5, 150],
] as const;
const PUBLISHED = [
  [34.44302652, 42.32928281, 36.34606901, 27.69744396, 42.99074274],
  [69.83036947, 90.68232743, 66.46062522, 46.38832061, 51.38547874],
  [17.62040631, 25.1016907, 20.25488733, 10.1899085, 20.73949248],
  [7.870985135, 0, 15.30876397, 6.526730443, 0],
] as const;

describe.runIf(present)('delta-Bullington against the published validation profiles', () => {
  test.each(PUBLISHED.flatMap((row, p) => row.map((db, c) => [p + 1, c + 1, db] as const)))(
    'path %i, case %i loses %f dB within 0.01',
    (path, number, db) => {
      const points = readFileSync(`${folder}/dbull_path${path}.csv`, 'utf8')
        .trim()
        .split('\n')
        .slice(1)
        .map((line) => line.split(',').map(Number))
        .filter(([km, m]) => Number.isFinite(km) && Number.isFinite(m));
      const [txHeightM, rxHeightM, frequencyMHz] = CASES[number - 1]!;
      const profile = {
        distancesM: points.map(([km]) => 1000 * km!),
        heightsM: points.map(([, m]) => m!),
        txHeightM,
        rxHeightM,
        frequencyMHz,
      };
      // the published values are for horizontal polarization over average land
      expect(Math.abs(deltaBullingtonDb(profile, { epsR: 22, sigma: 0.003 }, 'h') - db)).toBeLessThan(0.01);
    },
  );
});
