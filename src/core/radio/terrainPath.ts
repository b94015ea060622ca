import { EARTH_RADIUS_M } from './wavelength';

/**
 * Ground under a path and the two antennas over it. Distances in metres from the first end, strictly rising from 0, steps of
 * any length; heights in metres above sea level; antenna heights in metres above the ground at the ends.
 */
export type TerrainPath = {
  readonly distancesM: ArrayLike<number>;
  readonly heightsM: ArrayLike<number>;
  readonly txHeightM: number;
  readonly rxHeightM: number;
  readonly frequencyMHz: number;
  readonly earthRadiusM?: number;
};

export const lengthOf = (path: TerrainPath): number => path.distancesM[path.distancesM.length - 1]!;
export const earthRadiusOf = (path: TerrainPath): number => path.earthRadiusM ?? EARTH_RADIUS_M;

/** Height of the ground at point i over the chord of the round Earth between the ends, metres: h + d1 d2 / (2a). */
export function bulgedHeightM(path: TerrainPath, i: number): number {
  const d = path.distancesM[i]!;
  return path.heightsM[i]! + (d * (lengthOf(path) - d)) / (2 * earthRadiusOf(path));
}

/** Height of the transmitting antenna above sea level, metres. */
export const txAboveSeaM = (path: TerrainPath): number => path.heightsM[0]! + path.txHeightM;
/** Height of the receiving antenna above sea level, metres. */
export const rxAboveSeaM = (path: TerrainPath): number => path.heightsM[path.heightsM.length - 1]! + path.rxHeightM;

/** Does no ground between stand in the straight line from antenna to antenna? */
export function inLineOfSight(path: TerrainPath): boolean {
  const d = lengthOf(path);
  const txM = txAboveSeaM(path);
  const rxM = rxAboveSeaM(path);
  for (let i = 1; i < path.distancesM.length - 1; i++) {
    const share = path.distancesM[i]! / d;
    if (bulgedHeightM(path, i) > txM + (rxM - txM) * share) return false;
  }
  return true;
}
