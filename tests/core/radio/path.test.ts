import { describe, expect, test } from 'vitest';
import { type PathInput, pathColumns } from '../../../src/core/radio/path';

const flat: PathInput = {
  frequencyMHz: 150,
  polarization: 'v',
  txHeightM: 0.5,
  rxHeightM: 1.7,
  distancesM: [0, 100, 300, 1_000],
  heightsM: [50, 50, 50, 50],
  ground: { epsR: 15, sigma: 0.001 },
};

describe('the columns of a profile', () => {
  test('flat ground: model, terrain field and flat earth agree within 0.5 dB at 1 km', () => {
    const columns = pathColumns(flat);
    expect(Math.abs(columns.terrainFieldExcessDb - columns.flatEarthExcessDb)).toBeLessThan(0.5);
    expect(Math.abs(columns.modelExcessDb - columns.flatEarthExcessDb)).toBeLessThan(0.5);
    expect(columns.lineOfSight).toBe(true);
  });

  test('points put into straight stretches change the terrain field by less than 0.3 dB', () => {
    const coarse = { ...flat, distancesM: [0, 400, 700, 1_600], heightsM: [50, 90, 60, 75] };
    const distancesM = Array.from({ length: 33 }, (_, i) => i * 50);
    const between = (x: number) => {
      const i = x < 400 ? 0 : x < 700 ? 1 : 2;
      const [x0, x1] = [coarse.distancesM[i]!, coarse.distancesM[i + 1]!];
      return coarse.heightsM[i]! + ((coarse.heightsM[i + 1]! - coarse.heightsM[i]!) * (x - x0)) / (x1 - x0);
    };
    const fine = { ...flat, distancesM, heightsM: distancesM.map(between) };
    expect(Math.abs(pathColumns(fine).terrainFieldExcessDb - pathColumns(coarse).terrainFieldExcessDb)).toBeLessThan(0.3);
  });

  test('a clear valley crossing has no plane-earth loss: at least 20 dB less than over flat ground', () => {
    const distancesM = Array.from({ length: 41 }, (_, i) => i * 25);
    const valley = {
      ...flat,
      polarization: 'h' as const,
      distancesM,
      heightsM: distancesM.map((x) => 100 - 60 * Math.sin((Math.PI * x) / 1_000)),
    };
    const columns = pathColumns(valley);
    expect(columns.flatEarthExcessDb - columns.modelExcessDb).toBeGreaterThan(20);
  });

  test.each([5, 12, 30, 60, 79])('%i m: all columns are finite', (lengthM) => {
    const columns = pathColumns({ ...flat, distancesM: [0, lengthM / 2, lengthM], heightsM: [50, 51, 50] });
    for (const value of Object.values(columns)) expect(typeof value === 'boolean' || Number.isFinite(value)).toBe(true);
  });

  test('distances that do not rise from 0 and lists of different length are refused with the place named', () => {
    expect(() => pathColumns({ ...flat, distancesM: [0, 100, 100, 1_000] })).toThrow(/distancesM\.2/);
    expect(() => pathColumns({ ...flat, distancesM: [5, 100, 300, 1_000] })).toThrow(/first 0/);
    expect(() => pathColumns({ ...flat, heightsM: [1, 2] })).toThrow(/2 heights for 4 distances/);
  });
});
