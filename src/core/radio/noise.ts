import type { NoiseClassId } from '../scenario/schema';
import { toDb } from '../units/decibels';

const BOLTZMANN = 1.380649e-23;
const STANDARD_KELVIN = 290;

/** Median man-made noise figure c - d log f by place, dB over kT0B. @source ITU-R P.372, table of constants c and d */
const MAN_MADE: { readonly [id in NoiseClassId]: readonly [number, number] } = {
  city: [76.8, 27.7],
  residential: [72.5, 27.7],
  rural: [67.2, 27.7],
  'quiet-rural': [53.6, 28.6],
};

/** Median man-made noise figure, dB over kT0B; the city has its own line above 129 MHz. @source ITU-R P.372 */
export function manMadeNoiseDb(place: NoiseClassId, frequencyMHz: number): number {
  const [c, d] = MAN_MADE[place];
  if (place === 'city' && frequencyMHz > 129) return 44.3 - 12.3 * Math.log10(frequencyMHz);
  return c - d * Math.log10(frequencyMHz);
}

/** Galactic noise figure 52 - 23 log f, dB over kT0B. @source ITU-R P.372 */
export const galacticNoiseDb = (frequencyMHz: number): number => 52 - 23 * Math.log10(frequencyMHz);

/** Thermal noise kT0B in dBm. */
export const thermalNoiseDbm = (bandwidthHz: number, kelvin = STANDARD_KELVIN): number => 30 + toDb(BOLTZMANN * kelvin * bandwidthHz);
