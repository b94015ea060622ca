import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { permittivity } from '../../src/core/radio/ground';
import { pathColumns } from '../../src/core/radio/path';
import { terrainField } from '../../src/core/radio/terrainField';

type Drawn = {
  readonly frequencyMHz: number;
  readonly txHeightM: number;
  readonly rxHeightM: number;
  readonly epsR: number;
  readonly sigma: number;
  readonly stepM: number;
  readonly vDb: number;
  readonly hDb: number;
  readonly heightsM: readonly number[];
};

// Boundary integral equation over an impedance surface, computed independently for this project; how is said in the file.
const { profiles } = JSON.parse(readFileSync('tests/outside/data/terrain-drawn.json', 'utf8')) as { readonly profiles: readonly Drawn[] };
const distancesOf = ({ heightsM, stepM }: Drawn): number[] => heightsM.map((_, i) => i * stepM);
const rms = (list: readonly number[]): number => Math.sqrt(list.reduce((sum, x) => sum + x * x, 0) / list.length);

/** Model less reference, dB, both polarizations. */
const errorsDb = (drawn: Drawn): readonly number[] =>
  (['v', 'h'] as const).map((polarization) => {
    const ground = { epsR: drawn.epsR, sigma: drawn.sigma };
    const columns = pathColumns({ ...drawn, polarization, ground, distancesM: distancesOf(drawn) });
    return columns.modelExcessDb - (polarization === 'v' ? drawn.vDb : drawn.hDb);
  });

/** Differences between a profile at a frequency and the same walked the other way, dB, both polarizations. */
function swappedDb(drawn: Drawn, frequencyMHz: number): readonly number[] {
  const common = { frequencyMHz, distancesM: distancesOf(drawn), permittivities: [permittivity(drawn, frequencyMHz)] };
  const there = terrainField({ ...common, heightsM: drawn.heightsM, txHeightM: drawn.txHeightM, outHeightsM: [drawn.rxHeightM] });
  const turned = [...drawn.heightsM].reverse();
  const back = terrainField({ ...common, heightsM: turned, txHeightM: drawn.rxHeightM, outHeightsM: [drawn.txHeightM] });
  const last = drawn.heightsM.length - 1;
  return [Math.abs(there.vDb[last]! - back.vDb[last]!), Math.abs(there.hDb[last]! - back.hDb[last]!)];
}

describe('forty drawn hilly profiles, 40 to 433 MHz, both polarizations', () => {
  test('the model is within 2 dB rms of the boundary integral, a computation of another kind', () => {
    expect(profiles.length).toBe(40);
    expect(rms(profiles.flatMap(errorsDb))).toBeLessThanOrEqual(2);
  }, 60_000);

  test.each([
    [150, 0.5],
    [433, 1.5],
  ])(
    'ends swapped at %i MHz: median at most 0.5 dB, nine of ten within %f dB',
    (frequencyMHz, mostDb) => {
      const short = profiles.filter((drawn) => drawn.heightsM.length * drawn.stepM < 1_500);
      const sorted = short.flatMap((drawn) => swappedDb(drawn, frequencyMHz)).sort((a, b) => a - b);
      expect(sorted.length).toBeGreaterThanOrEqual(40);
      expect(sorted[sorted.length >> 1]!).toBeLessThanOrEqual(0.5);
      expect(sorted[Math.floor(0.9 * sorted.length)]!).toBeLessThanOrEqual(mostDb);
    },
    60_000,
  );
});
