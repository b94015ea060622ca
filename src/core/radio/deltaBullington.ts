import { bullingtonDb, smoothBullingtonDb } from './bullington';
import type { Ground, Polarization } from './ground';
import { type ProfileSlopes, profileSlopes } from './profileSlopes';
import { smoothEarthDb } from './smoothEarth';
import { earthRadiusOf, lengthOf, rxAboveSeaM, type TerrainPath, txAboveSeaM } from './terrainPath';

/**
 * Delta-Bullington diffraction loss, dB over free space: Bullington on the profile, plus what the smooth Earth under it loses
 * more than Bullington on that smooth Earth. @source ITU-R P.526, section 4.5.2, equations (53) to (62)
 */
export function deltaBullingtonDb(path: TerrainPath, ground: Ground, polarization: Polarization): number {
  const slopes = profileSlopes(path);
  const ends = effectiveHeights(path, slopes);
  const sphereDb = smoothEarthDb({
    distanceM: lengthOf(path),
    h1M: ends.txM,
    h2M: ends.rxM,
    frequencyMHz: path.frequencyMHz,
    polarization,
    ground,
    earthRadiusM: earthRadiusOf(path),
  });
  const addedDb = sphereDb > 0 ? Math.max(0, sphereDb - smoothBullingtonDb(path, ends.txM, ends.rxM)) : 0;
  return bullingtonDb(path, slopes.round) + addedDb;
}

/** Heights of the antennas above the smooth surface fitted under the profile. @source ITU-R P.526, section 4.5.3 */
function effectiveHeights(path: TerrainPath, { fitted, flat }: ProfileSlopes): { txM: number; rxM: number } {
  const lowered = flat.highestM > 0 ? flat.highestM / (flat.fromTx + flat.fromRx) : 0;
  const startM = fitted.startM - (lowered > 0 ? lowered * flat.fromTx : 0);
  const endM = fitted.endM - (lowered > 0 ? lowered * flat.fromRx : 0);
  return {
    txM: txAboveSeaM(path) - Math.min(startM, path.heightsM[0]!),
    rxM: rxAboveSeaM(path) - Math.min(endM, path.heightsM[path.heightsM.length - 1]!),
  };
}
