import { bullingtonDb } from './bullington';
import { deltaBullingtonDb } from './deltaBullington';
import { flatEarthExcessDb } from './flatEarth';
import { freeSpaceLossDb } from './freeSpace';
import { type Ground, type Polarization, permittivity } from './ground';
import { fittedPlane, flatEarthShare } from './handOver';
import { terrainField } from './terrainField';
import { inLineOfSight, type TerrainPath } from './terrainPath';
import { EARTH_RADIUS_M, wavelengthM } from './wavelength';

/** One profile: distances from the transmitter and heights above sea level in metres, antenna heights above ground. */
export type PathInput = {
  readonly frequencyMHz: number;
  readonly polarization: Polarization;
  readonly txHeightM: number;
  readonly rxHeightM: number;
  readonly distancesM: readonly number[];
  readonly heightsM: readonly number[];
  readonly ground: Ground;
  readonly earthRadiusM?: number | undefined;
};

/** Every figure of a profile; excess is over free space at the horizontal distance, positive dB is loss. */
export type PathColumns = {
  readonly freeSpaceDb: number;
  readonly flatEarthExcessDb: number;
  readonly bullingtonDb: number;
  readonly deltaBullingtonDb: number;
  readonly terrainFieldExcessDb: number;
  readonly modelExcessDb: number;
  readonly lineOfSight: boolean;
};

/** Most cells of the terrain field that one profile may cost: a few seconds. */
const MOST_CELLS = 4e8;

/** Computes all columns of a profile. @throws RangeError where distances do not rise from 0, lengths differ or numbers are out of reach */
export function pathColumns(input: PathInput): PathColumns {
  refuseImpossible(input);
  const { frequencyMHz, polarization, txHeightM, rxHeightM, distancesM, heightsM, ground } = input;
  const earthRadiusM = input.earthRadiusM ?? EARTH_RADIUS_M;
  const path: TerrainPath = { frequencyMHz, txHeightM, rxHeightM, distancesM, heightsM, earthRadiusM };
  const lengthM = distancesM[distancesM.length - 1]!;
  const eps = permittivity(ground, frequencyMHz);
  const flat = (h1M: number, h2M: number) =>
    flatEarthExcessDb(eps, polarization, frequencyMHz, { distanceM: lengthM, h1M, h2M }) + slantDb(lengthM, h1M - h2M);
  const bent = distancesM.map((x, i) => heightsM[i]! - (x * x) / (2 * earthRadiusM));
  const plane = fittedPlane(distancesM, bent, txHeightM, rxHeightM);
  const field = terrainField({ ...path, earthRadiusM, permittivities: [eps], outHeightsM: [rxHeightM] });
  const fieldDb = (polarization === 'v' ? field.vDb : field.hDb)[distancesM.length - 1]!;
  const share = flatEarthShare(lengthM, plane.departureM, frequencyMHz);
  return {
    freeSpaceDb: freeSpaceLossDb(lengthM, frequencyMHz),
    flatEarthExcessDb: flat(txHeightM, rxHeightM),
    bullingtonDb: bullingtonDb(path),
    deltaBullingtonDb: deltaBullingtonDb(path, ground, polarization),
    terrainFieldExcessDb: fieldDb,
    modelExcessDb: share * flat(plane.h1M, plane.h2M) + (1 - share) * fieldDb,
    lineOfSight: inLineOfSight(path),
  };
}

/** What the slant distance loses more than the horizontal one, dB. */
const slantDb = (distanceM: number, riseM: number): number => 10 * Math.log10(1 + (riseM / distanceM) ** 2);

function refuseImpossible({ frequencyMHz, txHeightM, rxHeightM, distancesM, heightsM }: PathInput): void {
  if (distancesM.length < 2) throw new RangeError('a profile needs at least two points');
  if (distancesM.length !== heightsM.length)
    throw new RangeError(`${heightsM.length} heights for ${distancesM.length} distances: give one height for each distance`);
  if (distancesM[0] !== 0) throw new RangeError(`distancesM begins at ${distancesM[0]}: give distances from the transmitter, the first 0`);
  const stalled = distancesM.findIndex((x, i) => i > 0 && !(x > distancesM[i - 1]!));
  if (stalled > 0) throw new RangeError(`distancesM.${stalled} is ${distancesM[stalled]}: let distances rise from one to the next`);
  if (!(frequencyMHz > 0 && txHeightM > 0 && rxHeightM > 0)) throw new RangeError('frequency and antenna heights must be above 0');
  const lambda = wavelengthM(frequencyMHz);
  const reliefM = Math.max(...heightsM) - Math.min(...heightsM);
  const cells = ((distancesM.at(-1)! / lambda) * (reliefM + txHeightM + rxHeightM + 50)) / (0.28 * lambda);
  if (cells > MOST_CELLS) throw new RangeError(`the terrain field of this profile is too large: shorten it or lower the frequency`);
}
