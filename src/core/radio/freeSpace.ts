import { type Complex, complex } from '../units/complex';
import { wavelengthM, waveNumber } from './wavelength';

/**
 * Free-space loss between isotropic antennas. @returns positive dB; add to a loss budget
 * @throws RangeError unless distanceM > 0 and frequencyMHz > 0   @source ITU-R P.525, equation (4): 20 log10(4 pi d / lambda)
 */
export function freeSpaceLossDb(distanceM: number, frequencyMHz: number): number {
  if (!(distanceM > 0 && frequencyMHz > 0)) throw new RangeError(`need > 0, got ${distanceM} m, ${frequencyMHz} MHz`);
  return 20 * Math.log10((4 * Math.PI * distanceM) / wavelengthM(frequencyMHz));
}

/** Field of 1 W e.i.r.p. at `distanceM` in free space, V/m. @source ITU-R P.525: sqrt(30 P) / d */
export const freeSpaceFieldVPerM = (distanceM: number): number => Math.sqrt(30) / distanceM;

/** Field strength in dB over 1 microvolt per metre of an e.i.r.p. in dBm at a distance. @source ITU-R P.525 */
export const fieldStrengthDbuVPerM = (eirpDbm: number, distanceM: number): number =>
  120 + eirpDbm - 30 + 20 * Math.log10(freeSpaceFieldVPerM(distanceM));

/** Radius of the first Fresnel zone at a point `d1M` from one end and `d2M` from the other. @source ITU-R P.526, equation (1) */
export const fresnelRadiusM = (d1M: number, d2M: number, frequencyMHz: number): number =>
  Math.sqrt((wavelengthM(frequencyMHz) * d1M * d2M) / (d1M + d2M));

/** The transverse field of a short dipole over its far field: 1 + 1/(jkr) - 1/(kr)^2. Computed independently for this project. */
export function nearFieldTransverse(distanceM: number, frequencyMHz: number): Complex {
  const kr = waveNumber(frequencyMHz) * distanceM;
  return complex(1 - 1 / (kr * kr), -1 / kr);
}

/** The radial field of a short dipole over the far field it has broadside, before the cosine to its axis: 2 (1/(jkr) - 1/(kr)^2).  */
export function nearFieldRadial(distanceM: number, frequencyMHz: number): Complex {
  const kr = waveNumber(frequencyMHz) * distanceM;
  return complex(-2 / (kr * kr), -2 / kr);
}
