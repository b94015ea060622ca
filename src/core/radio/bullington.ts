import { diffractionParameter, knifeEdgeDb } from './knifeEdge';
import { bulgedHeightM, lengthOf, rxAboveSeaM, type TerrainPath, txAboveSeaM } from './terrainPath';
import { roundLightFrequencyMHz } from './wavelength';

/**
 * Bullington diffraction loss over a profile, dB: one knife edge where the two horizon lines meet, then the correction
 * L + (1 - exp(-L/6)) (10 + 0.02 d). @source ITU-R P.526, section 4.5.1, equations (47) to (52)
 */
export function bullingtonDb(path: TerrainPath): number {
  const edgeDb = knifeEdgeDb(bullingtonParameter(path));
  return edgeDb + (1 - Math.exp(-edgeDb / 6)) * (10 + 0.02e-3 * lengthOf(path));
}

/** Diffraction parameter of the Bullington point, or of the profile point that comes nearest to blocking a clear path. */
function bullingtonParameter(path: TerrainPath): number {
  const d = lengthOf(path);
  const txM = txAboveSeaM(path);
  const rxM = rxAboveSeaM(path);
  const line = (rxM - txM) / d;
  const frequencyMHz = roundLightFrequencyMHz(path.frequencyMHz);
  let fromTx = -Infinity;
  let fromRx = -Infinity;
  let nearest = -Infinity;
  for (let i = 1; i < path.distancesM.length - 1; i++) {
    const di = path.distancesM[i]!;
    const hM = bulgedHeightM(path, i);
    fromTx = Math.max(fromTx, (hM - txM) / di);
    fromRx = Math.max(fromRx, (hM - rxM) / (d - di));
    nearest = Math.max(nearest, diffractionParameter(hM - txM - line * di, di, d - di, frequencyMHz));
  }
  if (fromTx < line || fromTx + fromRx <= 0) return nearest;
  const at = (rxM - txM + fromRx * d) / (fromTx + fromRx);
  return diffractionParameter(txM + fromTx * at - (txM + line * at), at, d - at, frequencyMHz);
}
