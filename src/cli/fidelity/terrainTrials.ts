import { flatEarthExcessDb } from '../../core/radio/flatEarth';
import { GROUND, permittivity } from '../../core/radio/ground';
import { diffractionParameter, knifeEdgeExactDb } from '../../core/radio/knifeEdge';
import { pathColumns } from '../../core/radio/path';
import { terrainField } from '../../core/radio/terrainField';
import { randomFor } from '../../core/random/draw';
import { TERRAIN_PATHS } from './terrainPaths';

const NO_BEND_M = 1e12;

/** Largest difference of the terrain field from the flat-earth solution on flat ground, 200 m to 3 km, both polarizations, dB. */
export function flatGroundWorstDb(frequencyMHz: number): number {
  const eps = permittivity(GROUND['medium-dry'], frequencyMHz);
  const distancesM = Array.from({ length: 61 }, (_, i) => i * 50);
  const outHeightsM = [0.5, 1.7, 4];
  const field = terrainField({
    frequencyMHz,
    txHeightM: 0.5,
    distancesM,
    heightsM: distancesM.map(() => 0),
    permittivities: [eps],
    outHeightsM,
    earthRadiusM: NO_BEND_M,
  });
  let worst = 0;
  for (let i = 4; i < distancesM.length; i++)
    outHeightsM.forEach((h2M, h) => {
      for (const pol of ['v', 'h'] as const) {
        const got = (pol === 'v' ? field.vDb : field.hDb)[i * outHeightsM.length + h]!;
        worst = Math.max(worst, Math.abs(got - flatEarthExcessDb(eps, pol, frequencyMHz, { distanceM: distancesM[i]!, h1M: 0.5, h2M })));
      }
    });
  return worst;
}

/**
 * Largest difference from the exact Fresnel integral behind a single wedge, dB. Antennas stand 20 m over hills on both sides of it,
 * the ground between lies 120 m lower, and its permittivity makes the upright reflection on the slopes vanish, so that the wedge
 * alone counts.
 */
export function wedgeWorstDb(): number {
  const frequencyMHz = 150;
  let worst = 0;
  for (const tipM of [10, 20, 25, 30, 40, 50]) {
    const field = terrainField({
      frequencyMHz,
      txHeightM: 20,
      distancesM: [0, 500, 1000, 1500, 2000],
      heightsM: [0, -120, tipM, -120, 0],
      permittivities: [permittivity({ epsR: 10, sigma: 1e-4 }, frequencyMHz)],
      outHeightsM: [20],
      earthRadiusM: NO_BEND_M,
    });
    const exact = knifeEdgeExactDb(diffractionParameter(tipM - 20, 1000, 1000, frequencyMHz));
    worst = Math.max(worst, Math.abs(field.vDb[4]! - exact));
  }
  return worst;
}

/** Root mean square difference of the model's loss from the reference profiles, dB. */
export function hillsRmsDb(): number {
  const squares = TERRAIN_PATHS.map((path) => {
    const columns = pathColumns({
      ...path,
      ground: { epsR: path.epsR, sigma: path.sigma },
      distancesM: path.heightsM.map((_, i) => i * path.stepM),
    });
    return (columns.modelExcessDb - path.excessDb) ** 2;
  });
  return Math.sqrt(squares.reduce((sum, x) => sum + x, 0) / squares.length);
}

/** Differences between a hilly path and the same path walked the other way, dB, sorted: both polarizations of seeded profiles. */
function reciprocityDb(profiles: number): readonly number[] {
  const differences: number[] = [];
  for (let seed = 0; seed < profiles; seed++) {
    const { distancesM, heightsM, frequencyMHz } = hillyProfile(seed);
    const common = { frequencyMHz, distancesM, permittivities: [permittivity({ epsR: 15, sigma: 0.005 }, frequencyMHz)] };
    const there = terrainField({ ...common, heightsM, txHeightM: 0.5, outHeightsM: [1.7] });
    const back = terrainField({ ...common, heightsM: [...heightsM].reverse(), txHeightM: 1.7, outHeightsM: [0.5] });
    const last = distancesM.length - 1;
    differences.push(Math.abs(there.vDb[last]! - back.vDb[last]!), Math.abs(there.hDb[last]! - back.hDb[last]!));
  }
  return differences.sort((a, b) => a - b);
}

let swapped: readonly number[] | undefined;

/** Differences of twelve profiles, computed once. */
export function swappedDb(): readonly number[] {
  swapped ??= reciprocityDb(12);
  return swapped;
}

/** Hills of five waves on points 25 m apart, 0.5 to 2.5 km long, no slope over 0.3. */
function hillyProfile(seed: number): { distancesM: number[]; heightsM: number[]; frequencyMHz: number } {
  for (let attempt = 0; ; attempt++) {
    const random = randomFor(`hilly-${seed}-${attempt}`, 'test');
    const points = Math.round(20 + 80 * random());
    const relief = 30 + 120 * random();
    const waves = Array.from({ length: 5 }, (_, i) => ({
      sizeM: (relief / (i + 1) ** 2) * (random() - 0.3) * 0.5,
      lengthM: (300 + 1500 * random()) / (i + 1),
      phase: 2 * Math.PI * random(),
    }));
    const heightsM = Array.from({ length: points + 1 }, (_, i) =>
      waves.reduce((sum, w) => sum + w.sizeM * Math.sin((2 * Math.PI * 25 * i) / w.lengthM + w.phase), 500),
    );
    const steepest = Math.max(...heightsM.slice(1).map((h, i) => Math.abs(h - heightsM[i]!) / 25));
    if (steepest > 0.3) continue;
    return { distancesM: heightsM.map((_, i) => i * 25), heightsM, frequencyMHz: [40, 72, 150, 216][seed % 4]! };
  }
}
