import { bullingtonDb, smoothBullingtonDb } from './bullington';
import type { Ground, Polarization } from './ground';
import { smoothEarthDb } from './smoothEarth';
import { earthRadiusOf, lengthOf, rxAboveSeaM, type TerrainPath, txAboveSeaM } from './terrainPath';

/**
 * Delta-Bullington diffraction loss, dB over free space: Bullington on the profile, plus what the smooth Earth under it loses
 * more than Bullington on that smooth Earth. @source ITU-R P.526, section 4.5.2, equations (53) to (62)
 */
export function deltaBullingtonDb(path: TerrainPath, ground: Ground, polarization: Polarization): number {
  const ends = effectiveHeights(path);
  const sphereDb = smoothEarthDb({
    distanceM: lengthOf(path),
    h1M: ends.txM,
    h2M: ends.rxM,
    frequencyMHz: path.frequencyMHz,
    polarization,
    ground,
    earthRadiusM: earthRadiusOf(path),
  });
  return bullingtonDb(path) + Math.max(0, sphereDb - smoothBullingtonDb(path, ends.txM, ends.rxM));
}

/** Heights of the antennas above the smooth surface fitted under the profile. @source ITU-R P.526, section 4.5.3 */
function effectiveHeights(path: TerrainPath): { txM: number; rxM: number } {
  const fitted = fittedSurface(path);
  const { highestM, fromTx, fromRx } = obstruction(path);
  let startM = fitted.startM;
  let endM = fitted.endM;
  if (highestM > 0) {
    startM -= (highestM * fromTx) / (fromTx + fromRx);
    endM -= (highestM * fromRx) / (fromTx + fromRx);
  }
  startM = Math.min(startM, path.heightsM[0]!);
  endM = Math.min(endM, path.heightsM[path.heightsM.length - 1]!);
  return { txM: txAboveSeaM(path) - startM, rxM: rxAboveSeaM(path) - endM };
}

/** Least-squares straight surface under the profile: its heights at the two ends, metres above sea level. */
function fittedSurface({ distancesM, heightsM }: TerrainPath): { startM: number; endM: number } {
  const d = distancesM[distancesM.length - 1]!;
  let v1 = 0;
  let v2 = 0;
  for (let i = 1; i < distancesM.length; i++) {
    const near = distancesM[i - 1]!;
    const far = distancesM[i]!;
    v1 += (far - near) * (heightsM[i]! + heightsM[i - 1]!);
    v2 += (far - near) * (heightsM[i]! * (2 * far + near) + heightsM[i - 1]! * (far + 2 * near));
  }
  return { startM: (2 * v1 * d - v2) / (d * d), endM: (v2 - v1 * d) / (d * d) };
}

/** How far the ground stands over the straight line between the antennas, and how steeply it does seen from either end. */
function obstruction(path: TerrainPath): { highestM: number; fromTx: number; fromRx: number } {
  const d = lengthOf(path);
  const txM = txAboveSeaM(path);
  const rxM = rxAboveSeaM(path);
  let highestM = -Infinity;
  let fromTx = -Infinity;
  let fromRx = -Infinity;
  const { distancesM, heightsM } = path;
  const rise = (rxM - txM) / d;
  for (let i = 1; i < distancesM.length - 1; i++) {
    const di = distancesM[i]!;
    const overM = heightsM[i]! - txM - rise * di;
    const seenFromTx = overM / di;
    const seenFromRx = overM / (d - di);
    if (overM > highestM) highestM = overM;
    if (seenFromTx > fromTx) fromTx = seenFromTx;
    if (seenFromRx > fromRx) fromRx = seenFromRx;
  }
  return { highestM, fromTx, fromRx };
}
