import { earthRadiusOf, lengthOf, rxAboveSeaM, type TerrainPath, txAboveSeaM } from './terrainPath';

/** What the two antennas of a path see: steepest slopes up from either end, and the point that comes nearest to blocking the line. */
export type Horizons = {
  readonly fromTx: number;
  readonly fromRx: number;
  /** Height of that point over the straight line, and its distance from the first end, metres. -Infinity where no point lies between. */
  readonly nearestOverM: number;
  readonly nearestAtM: number;
};

/** One look along a profile: the same on the round Earth and on a flat one, and the straight surface fitted under it. */
export type ProfileSlopes = {
  readonly round: Horizons;
  /** Over the straight line on a flat Earth: greatest height, and slopes of it from either end. */
  readonly flat: { readonly highestM: number; readonly fromTx: number; readonly fromRx: number };
  /** Least-squares surface: its heights at both ends, metres above sea level. */
  readonly fitted: { readonly startM: number; readonly endM: number };
};

/**
 * One pass with one division a point, since millions of profiles are gone through: longer than others for that; `npm run bench` holds it.
 * The nearest point has the greatest diffraction parameter, found by its square, which needs no root.
 * @source ITU-R P.526, equations (48) to (52), (55) to (58) and (59)
 */
export function profileSlopes(path: TerrainPath): ProfileSlopes {
  const { distancesM, heightsM } = path;
  const d = lengthOf(path);
  const txM = txAboveSeaM(path);
  const rise = (rxAboveSeaM(path) - txM) / d;
  const perBulge = 1 / (2 * earthRadiusOf(path));
  let [fromTx, fromRx, nearest, nearestOverM, nearestAtM] = [-Infinity, -Infinity, -Infinity, -Infinity, d / 2];
  let [highestM, flatTx, flatRx] = [-Infinity, -Infinity, -Infinity];
  let [v1, v2] = [0, 0];
  let near = 0;
  let nearHeightM = heightsM[0]!;
  const last = distancesM.length - 1;
  for (let i = 1; i <= last; i++) {
    const far = distancesM[i]!;
    const heightM = heightsM[i]!;
    v1 += (far - near) * (heightM + nearHeightM);
    v2 += (far - near) * (heightM * (2 * far + near) + nearHeightM * (far + 2 * near));
    near = far;
    nearHeightM = heightM;
    if (i === last) break;
    const rest = d - far;
    const part = 1 / (far * rest);
    const overM = heightM - txM - rise * far;
    const seenTx = overM * rest * part;
    const seenRx = overM * far * part;
    if (overM > highestM) highestM = overM;
    if (seenTx > flatTx) flatTx = seenTx;
    if (seenRx > flatRx) flatRx = seenRx;
    const roundTx = seenTx + rest * perBulge;
    const roundRx = seenRx + far * perBulge;
    if (roundTx > fromTx) fromTx = roundTx;
    if (roundRx > fromRx) fromRx = roundRx;
    const roundM = overM + far * rest * perBulge;
    const square = roundM * Math.abs(roundM) * part;
    if (square > nearest) {
      nearest = square;
      nearestOverM = roundM;
      nearestAtM = far;
    }
  }
  return {
    round: { fromTx: fromTx + rise, fromRx: fromRx - rise, nearestOverM, nearestAtM },
    flat: { highestM, fromTx: flatTx, fromRx: flatRx },
    fitted: { startM: (2 * v1 * d - v2) / (d * d), endM: (v2 - v1 * d) / (d * d) },
  };
}
