import { diffractionParameter, knifeEdgeDb } from './knifeEdge';
import { wavelengthM } from './wavelength';

/** A rounded top: height over the straight line, distances to the ends, radius of the top, all metres. */
export type RoundedTop = { readonly heightM: number; readonly d1M: number; readonly d2M: number; readonly radiusM: number };

/** Loss over a single rounded obstacle, dB: J(v) + T(m, n). @source ITU-R P.526, equations (32) to (37) */
export function roundedObstacleDb(top: RoundedTop, frequencyMHz: number): number {
  const { heightM, d1M, d2M, radiusM } = top;
  const bend = (Math.PI * radiusM) / wavelengthM(frequencyMHz);
  const m = (radiusM * (d1M + d2M)) / (d1M * d2M) / Math.cbrt(bend);
  const n = (heightM * Math.cbrt(bend) ** 2) / radiusM;
  const rest = 3.6 * m ** 1.5 - 0.8 * m * m;
  const t =
    m * n <= 4
      ? 7.2 * Math.sqrt(m) - (2 - 12.5 * n) * m + rest
      : -6 - 20 * Math.log10(m * n) + 7.2 * Math.sqrt(m) - (2 - 17 * n) * m + rest;
  return knifeEdgeDb(diffractionParameter(heightM, d1M, d2M, frequencyMHz)) + t;
}
