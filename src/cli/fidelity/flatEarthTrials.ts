import { flatEarthExcessDb } from '../../core/radio/flatEarth';
import { GROUND, type Polarization, permittivity } from '../../core/radio/ground';
import { waveNumber } from '../../core/radio/wavelength';
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

/** Largest difference of the closed form from the Sommerfeld integral, upright dipoles, dB: three classes, 5 to 50 m, 0.3 to 1.7 m. */
export function sommerfeldWorstDb(frequencyMHz: number): number {
  let worst = 0;
  for (const id of ['medium-dry', 'wet', 'fresh-water'] as const)
    for (const distanceM of [5, 15, 50])
      for (const [h1M, h2M] of [
        [0.3, 0.3],
        [0.5, 1.7],
        [1.7, 1.7],
      ] as const) {
        const eps = permittivity(GROUND[id], frequencyMHz);
        const path = { distanceM, h1M, h2M };
        // the integral gives the upright field over 1/r; the closed form compares with the upright field of the direct ray
        const k = waveNumber(frequencyMHz) * Math.hypot(distanceM, h1M - h2M);
        const cos2 = distanceM ** 2 / (distanceM ** 2 + (h1M - h2M) ** 2);
        const [re, im] = [cos2 * (1 - 1 / k ** 2) - (1 - cos2) * (2 / k ** 2), -cos2 / k - ((1 - cos2) * 2) / k];
        const upright = -10 * Math.log10(re * re + im * im);
        const closed = flatEarthExcessDb(eps, 'v', frequencyMHz, path) + upright;
        worst = Math.max(worst, Math.abs(closed - sommerfeldExcessDb(eps, 'v', frequencyMHz, path)));
      }
  return worst;
}
