import { type FlatPath, flatEarthExcessDb } from '../../core/radio/flatEarth';
import { GROUND, type Polarization, permittivity } from '../../core/radio/ground';
import { waveNumber } from '../../core/radio/wavelength';
import { GROUND_CLASSES } from '../../core/scenario/schema';
import { sommerfeldExcessDb } from './sommerfeld';

/** Gain over free space of the flat earth, dB. */
export const flatGain = (
  mhz: number,
  epsR: number,
  sigma: number,
  distanceM: number,
  h1M: number,
  h2M: number,
  pol: Polarization,
): number => -flatEarthExcessDb(permittivity({ epsR, sigma }, mhz), pol, mhz, { distanceM, h1M, h2M });

/** Largest difference of the flat earth from the Sommerfeld integral, dB: all ground classes, 5 to 50 m, heights 0.3 to 1.7 m. */
export function sommerfeldWorstDb(frequencyMHz: number, polarization: Polarization): number {
  let worst = 0;
  for (const id of GROUND_CLASSES)
    for (const distanceM of [5, 15, 50])
      for (const [h1M, h2M] of [
        [0.3, 0.3],
        [0.5, 1.7],
        [1.7, 1.7],
      ] as const) {
        const eps = permittivity(GROUND[id], frequencyMHz);
        const path = { distanceM, h1M, h2M };
        const closed = flatEarthExcessDb(eps, polarization, frequencyMHz, path) + directDb(polarization, frequencyMHz, path);
        worst = Math.max(worst, Math.abs(closed - sommerfeldExcessDb(eps, polarization, frequencyMHz, path)));
      }
  return worst;
}

/** The integral is told over 1/r, the flat earth over the direct ray with its near terms (V: its upright part). What lies between, dB. */
function directDb(polarization: Polarization, frequencyMHz: number, { distanceM, h1M, h2M }: FlatPath): number {
  const rM = Math.hypot(distanceM, h1M - h2M);
  const kr = waveNumber(frequencyMHz) * rM;
  const sin2 = polarization === 'v' ? ((h1M - h2M) / rM) ** 2 : 0;
  const [re, im] = [(1 - sin2) * (1 - 1 / kr ** 2) - (sin2 * 2) / kr ** 2, -(1 - sin2) / kr - (sin2 * 2) / kr];
  return -10 * Math.log10(re * re + im * im);
}
