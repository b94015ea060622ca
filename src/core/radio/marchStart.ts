import type { Complex } from '../units/complex';
import { narrowAngleRatio } from './flatEarth';
import { type FlatGround, START_M } from './marchGround';
import { wavelengthM, waveNumber } from './wavelength';

/**
 * Steepest wave of the start field, as a slope. Below about 170 MHz it is set by the Fresnel zone: what falls on the ground a few
 * hundred metres on comes from three to four zone radii of the start column, and a narrower one would leave a false ripple.
 */
export const startAngle = (frequencyMHz: number): number =>
  Math.min(2, Math.max(0.6, 3.5 * Math.sqrt(wavelengthM(frequencyMHz) / START_M)));

export type Start = {
  readonly frequencyMHz: number;
  readonly txHeightM: number;
  readonly topM: number;
  readonly terms: { readonly v: Complex; readonly h: Complex };
};

/**
 * Sets the field at the start from the flat-earth solution over the chord of the first stretch, whole up to a quarter of the
 * column over the transmitter and tapered above. @returns that chord's slope
 */
export function startField(field: Float64Array, zM: Float64Array, ground: FlatGround, start: Start): number {
  const { frequencyMHz, txHeightM, topM } = start;
  const x0 = ground.xM[ground.begin]!;
  const k = waveNumber(frequencyMHz);
  const endM = Math.min(topM, txHeightM + startAngle(frequencyMHz) * x0);
  const wholeM = txHeightM + (endM - txHeightM) / 4;
  for (const pol of ['v', 'h'] as const) {
    for (let i = 0; i < zM.length && zM[i]! < endM; i++) {
      const beyond = Math.max(0, (zM[i]! - wholeM) / (endM - wholeM));
      const taper = 0.5 * (1 + Math.cos(Math.PI * beyond));
      const ratio = narrowAngleRatio(start.terms[pol], k, { distanceM: x0, h1M: txHeightM, h2M: zM[i]! });
      const at = 4 * i + (pol === 'v' ? 0 : 2);
      field[at] = taper * ratio.re;
      field[at + 1] = taper * ratio.im;
    }
  }
  return (ground.zM[ground.begin]! - ground.zM[0]!) / x0;
}
