import { diffractionParameter, knifeEdgeDb } from './knifeEdge';
import { type Horizons, profileSlopes } from './profileSlopes';
import { earthRadiusOf, lengthOf, rxAboveSeaM, type TerrainPath, txAboveSeaM } from './terrainPath';
import { roundLightFrequencyMHz } from './wavelength';

/**
 * Bullington diffraction loss over a profile, dB: one knife edge where the two horizon lines meet, then the correction
 * L + (1 - exp(-L/6)) (10 + 0.02 d). @source ITU-R P.526, section 4.5.1, equations (47) to (52)
 */
export const bullingtonDb = (path: TerrainPath, horizons: Horizons = profileSlopes(path).round): number =>
  lossDb(path, horizons, txAboveSeaM(path), rxAboveSeaM(path));

/** The same over the bare round Earth at the points of a path, antennas so high above it. @source ITU-R P.526, section 4.5.3 */
export const smoothBullingtonDb = (path: TerrainPath, txM: number, rxM: number): number =>
  lossDb(path, smoothHorizons(path, txM, rxM), txM, rxM);

function lossDb(path: TerrainPath, horizons: Horizons, txM: number, rxM: number): number {
  const edgeDb = knifeEdgeDb(bullingtonParameter(path, horizons, txM, rxM));
  return edgeDb + (1 - Math.exp(-edgeDb / 6)) * (10 + 0.02e-3 * lengthOf(path));
}

/** Diffraction parameter of the Bullington point, or of the profile point that comes nearest to blocking a clear path. */
function bullingtonParameter(path: TerrainPath, { fromTx, fromRx, nearestOverM, nearestAtM }: Horizons, txM: number, rxM: number): number {
  const d = lengthOf(path);
  const line = (rxM - txM) / d;
  const frequencyMHz = roundLightFrequencyMHz(path.frequencyMHz);
  if (fromTx < line || fromTx + fromRx <= 0) return diffractionParameter(nearestOverM, nearestAtM, d - nearestAtM, frequencyMHz);
  const at = (rxM - txM + fromRx * d) / (fromTx + fromRx);
  return diffractionParameter(fromTx * at - line * at, at, d - at, frequencyMHz);
}

/**
 * On the smooth Earth the slope (d - x)/2a - h/x has one top, at x = sqrt(2ah): one of the two points beside it is the steepest.
 * Only where the path is clear are all points gone through.
 */
function smoothHorizons(path: TerrainPath, txM: number, rxM: number): Horizons {
  const { distancesM } = path;
  const d = lengthOf(path);
  const last = distancesM.length - 2;
  if (last < 1) return { fromTx: -Infinity, fromRx: -Infinity, nearestOverM: -Infinity, nearestAtM: d / 2 };
  const perBulge = 1 / (2 * earthRadiusOf(path));
  const horizonM = (heightM: number) => Math.sqrt(Math.max(0, heightM) / perBulge);
  const seenFromTx = (i: number) => (d - distancesM[i]!) * perBulge - txM / distancesM[i]!;
  const seenFromRx = (i: number) => distancesM[i]! * perBulge - rxM / (d - distancesM[i]!);
  const afterTx = Math.min(last, firstNotBefore(distancesM, horizonM(txM)));
  const afterRx = Math.min(last, firstNotBefore(distancesM, d - horizonM(rxM)));
  const fromTx = Math.max(seenFromTx(afterTx), seenFromTx(Math.max(1, afterTx - 1)));
  const fromRx = Math.max(seenFromRx(afterRx), seenFromRx(Math.max(1, afterRx - 1)));
  const clear = fromTx < (rxM - txM) / d || fromTx + fromRx <= 0;
  return { fromTx, fromRx, ...(clear ? smoothNearest(path, txM, rxM) : { nearestOverM: -Infinity, nearestAtM: d / 2 }) };
}

function smoothNearest(path: TerrainPath, txM: number, rxM: number): Pick<Horizons, 'nearestOverM' | 'nearestAtM'> {
  const { distancesM } = path;
  const d = lengthOf(path);
  const line = (rxM - txM) / d;
  const perBulge = 1 / (2 * earthRadiusOf(path));
  let [nearest, nearestOverM, nearestAtM] = [-Infinity, -Infinity, d / 2];
  for (let i = 1; i < distancesM.length - 1; i++) {
    const at = distancesM[i]!;
    const between = at * (d - at);
    const overM = between * perBulge - txM - line * at;
    const square = (overM * Math.abs(overM)) / between;
    if (square > nearest) {
      nearest = square;
      nearestOverM = overM;
      nearestAtM = at;
    }
  }
  return { nearestOverM, nearestAtM };
}

/** Index of the first inner point at or beyond a distance. */
function firstNotBefore(distancesM: ArrayLike<number>, atM: number): number {
  let [low, high] = [1, distancesM.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (distancesM[middle]! < atM) low = middle + 1;
    else high = middle;
  }
  return low;
}
