import type { Ground, Polarization } from './ground';
import { roundLightFrequencyMHz, wavelengthM } from './wavelength';

/** A path over the smooth round Earth: metres, heights above its surface. */
export type SmoothPath = {
  readonly distanceM: number;
  readonly h1M: number;
  readonly h2M: number;
  readonly frequencyMHz: number;
  readonly polarization: Polarization;
  readonly ground: Ground;
  readonly earthRadiusM: number;
};

/** Diffraction loss over the smooth Earth, dB. @source ITU-R P.526, section 3.2, equations (21) to (25) */
export function smoothEarthDb(path: SmoothPath): number {
  const { distanceM, h1M, h2M, earthRadiusM } = path;
  const horizonM = Math.sqrt(2 * earthRadiusM) * (Math.sqrt(h1M) + Math.sqrt(h2M));
  if (distanceM >= horizonM) return firstTermDb(path, earthRadiusM);
  const { clearanceM, d1M, d2M } = leastClearance(path);
  const requiredM = 0.552 * Math.sqrt((d1M * d2M * wavelengthM(roundLightFrequencyMHz(path.frequencyMHz))) / distanceM);
  if (clearanceM > requiredM) return 0;
  const touchingM = 0.5 * (distanceM / (Math.sqrt(h1M) + Math.sqrt(h2M))) ** 2;
  const lossDb = firstTermDb(path, touchingM);
  return lossDb < 0 ? 0 : (1 - clearanceM / requiredM) * lossDb;
}

/** Where the line of sight comes nearest to the round Earth. @source ITU-R P.526, equations (22) */
function leastClearance({ distanceM: d, h1M, h2M, earthRadiusM: a }: SmoothPath): { clearanceM: number; d1M: number; d2M: number } {
  const c = (h1M - h2M) / (h1M + h2M);
  const m = (d * d) / (4 * a * (h1M + h2M));
  const inner = ((3 * c) / 2) * Math.sqrt((3 * m) / (m + 1) ** 3);
  const b = 2 * Math.sqrt((m + 1) / (3 * m)) * Math.cos(Math.PI / 3 + Math.acos(Math.min(1, Math.max(-1, inner))) / 3);
  const d1M = (d / 2) * (1 + b);
  const d2M = d - d1M;
  const clearanceM = ((h1M - (d1M * d1M) / (2 * a)) * d2M + (h2M - (d2M * d2M) / (2 * a)) * d1M) / d;
  return { clearanceM, d1M, d2M };
}

/** First term of the residue series. @source ITU-R P.526, section 3.1.1, equations (13) to (18) */
function firstTermDb(path: SmoothPath, earthRadiusM: number): number {
  const { epsR, sigma } = path.ground;
  const f = path.frequencyMHz;
  const aKm = earthRadiusM / 1000;
  const conductive = (18_000 * sigma) / f;
  const kH = 0.36 * (aKm * f) ** (-1 / 3) * ((epsR - 1) ** 2 + conductive ** 2) ** -0.25;
  const k = path.polarization === 'h' ? kH : kH * Math.sqrt(epsR ** 2 + conductive ** 2);
  const beta = (1 + 1.6 * k ** 2 + 0.67 * k ** 4) / (1 + 4.5 * k ** 2 + 1.53 * k ** 4);
  const x = 2.188 * beta * (f / aKm ** 2) ** (1 / 3) * (path.distanceM / 1000);
  const y = 9.575e-3 * beta * (f ** 2 / aKm) ** (1 / 3);
  const distanceDb = x >= 1.6 ? 11 + 10 * Math.log10(x) - 17.6 * x : -20 * Math.log10(x) - 5.6488 * x ** 1.425;
  return -distanceDb - heightGainDb(beta * y * path.h1M, k) - heightGainDb(beta * y * path.h2M, k);
}

function heightGainDb(b: number, k: number): number {
  const gainDb = b > 2 ? 17.6 * Math.sqrt(b - 1.1) - 5 * Math.log10(b - 1.1) - 8 : 20 * Math.log10(b + 0.1 * b ** 3);
  return Math.max(gainDb, 2 + 20 * Math.log10(k));
}
