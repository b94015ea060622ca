import { diffractionParameter, knifeEdgeDb } from './knifeEdge';
import { earthRadiusOf, lengthOf, rxAboveSeaM, type TerrainPath, txAboveSeaM } from './terrainPath';
import { roundLightFrequencyMHz } from './wavelength';

/**
 * Bullington diffraction loss over a profile, dB: one knife edge where the two horizon lines meet, then the correction
 * L + (1 - exp(-L/6)) (10 + 0.02 d). @source ITU-R P.526, section 4.5.1, equations (47) to (52)
 */
export const bullingtonDb = (path: TerrainPath): number =>
  lossDb(path, { heightsM: path.heightsM, txM: txAboveSeaM(path), rxM: rxAboveSeaM(path) });

/** The same over the bare round Earth between the same ends, antennas so high above it. @source ITU-R P.526, section 4.5.3 */
export const smoothBullingtonDb = (path: TerrainPath, txM: number, rxM: number): number => lossDb(path, { heightsM: null, txM, rxM });

/** Ground above sea level at the points of a path, none where the Earth is smooth, and both antennas above sea level, metres. */
type Over = { readonly heightsM: ArrayLike<number> | null; readonly txM: number; readonly rxM: number };

function lossDb(path: TerrainPath, over: Over): number {
  const edgeDb = knifeEdgeDb(bullingtonParameter(path, over));
  return edgeDb + (1 - Math.exp(-edgeDb / 6)) * (10 + 0.02e-3 * lengthOf(path));
}

/** Diffraction parameter of the Bullington point, or of the profile point that comes nearest to blocking a clear path. */
function bullingtonParameter(path: TerrainPath, over: Over): number {
  const { distancesM } = path;
  const { heightsM, txM, rxM } = over;
  const d = lengthOf(path);
  const line = (rxM - txM) / d;
  const perBulge = 1 / (2 * earthRadiusOf(path));
  let fromTx = -Infinity;
  let fromRx = -Infinity;
  for (let i = 1; i < distancesM.length - 1; i++) {
    const di = distancesM[i]!;
    const hM = (heightsM === null ? 0 : heightsM[i]!) + di * (d - di) * perBulge;
    const seenFromTx = (hM - txM) / di;
    const seenFromRx = (hM - rxM) / (d - di);
    if (seenFromTx > fromTx) fromTx = seenFromTx;
    if (seenFromRx > fromRx) fromRx = seenFromRx;
  }
  if (fromTx < line || fromTx + fromRx <= 0) return nearestParameter(path, over);
  const at = (rxM - txM + fromRx * d) / (fromTx + fromRx);
  return diffractionParameter(txM + fromTx * at - (txM + line * at), at, d - at, roundLightFrequencyMHz(path.frequencyMHz));
}

/** The largest diffraction parameter of any point; -Infinity where there is no point between. Found by its square, which needs no root. */
function nearestParameter(path: TerrainPath, { heightsM, txM, rxM }: Over): number {
  const { distancesM } = path;
  const d = lengthOf(path);
  const line = (rxM - txM) / d;
  const perBulge = 1 / (2 * earthRadiusOf(path));
  let most = -Infinity;
  let [overM, atM] = [-Infinity, d / 2];
  for (let i = 1; i < distancesM.length - 1; i++) {
    const di = distancesM[i]!;
    const between = di * (d - di);
    const hM = (heightsM === null ? 0 : heightsM[i]!) + between * perBulge - txM - line * di;
    const square = (hM * Math.abs(hM)) / between;
    if (square > most) {
      most = square;
      overM = hM;
      atM = di;
    }
  }
  return diffractionParameter(overM, atM, d - atM, roundLightFrequencyMHz(path.frequencyMHz));
}
