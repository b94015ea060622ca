import { wavelengthM } from './wavelength';

/** Where the flat-earth solution gives way to the terrain field with distance, metres. */
const NEAR_M = 40;
const FAR_M = 80;

/** The straight line fitted under a path: heights of the ends over it, and how far the ground departs from it, metres. */
export type FittedPlane = { readonly h1M: number; readonly h2M: number; readonly departureM: number };

/** A height measured from the fitted plane never falls under this share of the height above the ground. */
const LEAST_SHARE = 0.25;

/**
 * Least-squares line through the ground with weights of half the neighbouring gaps, so that a point that comes in at the end of a
 * growing path comes in with no weight. Distances in metres, rising; heights with the bend of the Earth taken off.
 */
export function fittedPlane(xM: ArrayLike<number>, zM: ArrayLike<number>, txHeightM: number, rxHeightM: number): FittedPlane {
  const n = xM.length;
  let [w, wx, wz, wxx, wxz] = [0, 0, 0, 0, 0];
  for (let i = 0; i < n; i++) {
    const weight = (xM[Math.min(n - 1, i + 1)]! - xM[Math.max(0, i - 1)]!) / 2;
    const z = zM[i]! - zM[0]!;
    w += weight;
    wx += weight * xM[i]!;
    wz += weight * z;
    wxx += weight * xM[i]! * xM[i]!;
    wxz += weight * xM[i]! * z;
  }
  const slope = (w * wxz - wx * wz) / (w * wxx - wx * wx);
  const start = (wz - slope * wx) / w;
  let departureM = 0;
  for (let i = 0; i < n; i++) departureM = Math.max(departureM, Math.abs(zM[i]! - zM[0]! - start - slope * xM[i]!));
  const end = zM[n - 1]! - zM[0]! - start - slope * xM[n - 1]!;
  return {
    h1M: Math.max(LEAST_SHARE * txHeightM, txHeightM - start),
    h2M: Math.max(LEAST_SHARE * rxHeightM, rxHeightM + end),
    departureM,
  };
}

/** 0 below `from`, 1 above `to`, smooth between. */
export function smoothStep(from: number, to: number, at: number): number {
  const t = Math.min(1, Math.max(0, (at - from) / (to - from)));
  return t * t * (3 - 2 * t);
}

/**
 * Share of the flat-earth solution in the answer, 0 to 1: near the tag, and where the ground departs from its fitted plane by
 * less than an eighth of a wavelength; the terrain field has the rest.
 */
export function flatEarthShare(distanceM: number, departureM: number, frequencyMHz: number): number {
  const lambda = wavelengthM(frequencyMHz);
  const far = smoothStep(NEAR_M, FAR_M, distanceM);
  const rough = smoothStep(lambda / 12, lambda / 6, departureM);
  return 1 - far * rough;
}
