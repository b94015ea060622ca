import { type Complex, complex } from '../units/complex';
import { besselJ0, besselY0 } from './besselZero';

/** Below this circumference in wavelengths a cylinder is a thin wire: one term serves. */
const THIN = 0.12;

/**
 * Scattering coefficient of a long conducting cylinder of any thickness for the field component in the plane of ray and axis:
 * -sqrt(2j/(pi k)) / sin b times the sum of e_n J_n/H_n(2) cos(n turn), all at ka sin b; e_0 = 1, else 2. `turn` is the angle round
 * the axis from straight on. A tower is no thin wire: forward of a mast of 1 m radius at 150 MHz the first term alone is 15 dB short.
 * Derived for this project from the series for a conducting cylinder.
 */
export function cylinderCoefficient(k: number, radiusM: number, sinBeta: number, turn: number): Complex {
  const x = k * radiusM * sinBeta;
  const parts = partsOf(x);
  let [re, im] = [0, 0];
  for (let n = 0; n < parts.length / 2; n++) {
    const weight = (n === 0 ? 1 : 2) * Math.cos(n * turn);
    re += weight * parts[2 * n]!;
    im += weight * parts[2 * n + 1]!;
  }
  const root = 1 / (Math.sqrt(Math.PI * k) * sinBeta); // sqrt(2j/(pi k)) = (1 + j) / sqrt(pi k)
  return complex(-root * (re - im), -root * (re + im));
}

/** J_n/H_n(2) = J_n / (J_n - j Y_n) for n = 0, 1, … until they are nil, re and im interleaved. */
function partsOf(x: number): Float64Array {
  const orders = x < THIN ? 1 : Math.ceil(x + 4 * Math.cbrt(x) + 4);
  const j = besselJs(x, orders);
  const out = new Float64Array(2 * orders);
  let [before, y] = [besselY0(x), 0];
  // from the cross product J1 Y0 - J0 Y1 = 2/(pi x)
  let next = (j[1]! * before - 2 / (Math.PI * x)) / j[0]!;
  for (let n = 0; n < orders; n++) {
    y = before;
    const size = j[n]! ** 2 + y * y;
    out[2 * n] = j[n]! ** 2 / size;
    out[2 * n + 1] = (j[n]! * y) / size;
    [before, next] = [next, (2 * (n + 1) * next) / x - y];
  }
  return out;
}

/** J_0 … J_count(x) by recurrence from above, scaled by J_0. @source J. C. P. Miller's recurrence, any table of functions */
function besselJs(x: number, count: number): Float64Array {
  const out = new Float64Array(count + 1);
  let [above, here] = [0, 1e-30];
  for (let n = count + 12; n >= 0; n--) {
    if (n <= count) out[n] = here;
    [above, here] = [here, (2 * n * here) / x - above];
  }
  // J0 + 2 (J2 + J4 + …) = 1 settles the scale even where J0 is nil
  let sum = out[0]!;
  for (let n = 2; n <= count; n += 2) sum += 2 * out[n]!;
  if (count < 4) sum = out[0]! / besselJ0(x);
  for (let n = 0; n <= count; n++) out[n]! /= sum;
  return out;
}
