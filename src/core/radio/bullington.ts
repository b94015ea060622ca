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
 * On the smooth Earth the slope (d - x)/2a - h/x has one top, at x = sqrt(2ah): one of the two points beside it is the steepest. Both
 * ends are asked by the same function; no function is made within, since that costs more than the rest where names are kept.
 */
function smoothHorizons(path: TerrainPath, txM: number, rxM: number): Horizons {
  const { distancesM } = path;
  const d = lengthOf(path);
  const last = distancesM.length - 2;
  if (last < 1) return { fromTx: -Infinity, fromRx: -Infinity, nearestOverM: -Infinity, nearestAtM: d / 2 };
  const perBulge = 1 / (2 * earthRadiusOf(path));
  const afterTx = Math.min(last, firstNotBefore(distancesM, Math.sqrt(Math.max(0, txM) / perBulge)));
  const afterRx = Math.min(last, firstNotBefore(distancesM, d - Math.sqrt(Math.max(0, rxM) / perBulge)));
  const [txAfter, txBefore] = [distancesM[afterTx]!, distancesM[Math.max(1, afterTx - 1)]!];
  const [rxAfter, rxBefore] = [d - distancesM[afterRx]!, d - distancesM[Math.max(1, afterRx - 1)]!];
  const fromTx = Math.max(smoothSlope(txAfter, d, txM, perBulge), smoothSlope(txBefore, d, txM, perBulge));
  const fromRx = Math.max(smoothSlope(rxAfter, d, rxM, perBulge), smoothSlope(rxBefore, d, rxM, perBulge));
  if (fromTx >= (rxM - txM) / d && fromTx + fromRx > 0) return { fromTx, fromRx, nearestOverM: -Infinity, nearestAtM: d / 2 };
  const nearestAtM = smoothNearestM(path, txM, rxM);
  return { fromTx, fromRx, nearestOverM: smoothOverM(nearestAtM, d, txM, rxM, perBulge), nearestAtM };
}

/** Slope up to the round Earth at a distance `atM` of `d` metres, from a height at this end over the line through both feet. */
const smoothSlope = (atM: number, d: number, heightM: number, perBulge: number): number => (d - atM) * perBulge - heightM / atM;

/** Height of the round Earth over the straight line from antenna to antenna. */
const smoothOverM = (atM: number, d: number, txM: number, rxM: number, perBulge: number): number =>
  atM * (d - atM) * perBulge - txM - ((rxM - txM) / d) * atM;

/**
 * Distance of the point of a clear smooth path that comes nearest to blocking it. With t = sqrt(x/(d - x)) the clearance over the
 * Fresnel radius is, but for a factor, h1/(d t) + h2 t/d - (d/2a) t/(1 + t^2): where that is nowhere negative it falls to one least
 * value and rises from there, so the point is found by halving.
 */
function smoothNearestM(path: TerrainPath, txM: number, rxM: number): number {
  const { distancesM } = path;
  const d = lengthOf(path);
  const perBulge = 1 / (2 * earthRadiusOf(path));
  let low = 1;
  let high = distancesM.length - 2;
  while (low < high) {
    const middle = (low + high) >> 1;
    const [near, far] = [distancesM[middle]!, distancesM[middle + 1]!];
    if (clearance(near, d, smoothOverM(near, d, txM, rxM, perBulge)) > clearance(far, d, smoothOverM(far, d, txM, rxM, perBulge)))
      low = middle + 1;
    else high = middle;
  }
  return distancesM[low]!;
}

/** Square of clearance over Fresnel radius, with its sign, but for a factor that is the same all along. */
const clearance = (atM: number, d: number, overM: number): number => (-overM * Math.abs(overM)) / (atM * (d - atM));

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
