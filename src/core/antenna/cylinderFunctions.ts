import type { Complex } from '../units/complex';

/** Bessel functions of whole orders 0..order at a positive real argument. */
export type BesselOrders = { readonly j: Float64Array; readonly y: Float64Array };

const EULER = 0.5772156649015329;

/**
 * J by downward recurrence (Miller), Y0 by its Neumann series in J (Abramowitz and Stegun 9.1.89, from
 * memory) and Y1 by that series' slope, higher Y upward. Good to about 1e-10 up to an argument of 30.
 */
export function besselOrders(order: number, x: number): BesselOrders {
  const top = 2 * Math.ceil((Math.max(order, x) + 20) / 2) + 10;
  const j = new Float64Array(top + 2);
  j[top] = 1e-250;
  for (let n = top; n > 0; n--) {
    j[n - 1] = (2 * n * j[n]!) / x - j[n + 1]!;
    if (Math.abs(j[n - 1]!) > 1e200) for (let m = n - 1; m <= top; m++) j[m]! *= 1e-250;
  }
  let sum = j[0]!;
  for (let n = 2; n <= top; n += 2) sum += 2 * j[n]!;
  for (let n = 0; n <= top; n++) j[n]! /= sum;
  const y = new Float64Array(order + 2);
  const log = Math.log(x / 2) + EULER;
  let y0 = log * j[0]!;
  let y1 = log * j[1]! - j[0]! / x; // Y1 = -Y0', term by term
  for (let m = 1; 2 * m + 1 <= top; m++) {
    const sign = m % 2 === 0 ? 1 : -1;
    y0 -= (2 * sign * j[2 * m]!) / m;
    y1 += (sign * (j[2 * m - 1]! - j[2 * m + 1]!)) / m;
  }
  y[0] = (2 / Math.PI) * y0;
  y[1] = (2 / Math.PI) * y1;
  for (let n = 1; n <= order; n++) y[n + 1] = (2 * n * y[n]!) / x - y[n - 1]!;
  return { j: j.slice(0, order + 2), y };
}

/** J'_n(z) / J_n(z) for n = 0..order at a complex argument, by the downward recurrence of the logarithmic derivative. */
export function besselLogSlopes(order: number, z: Complex): readonly Complex[] {
  const size = z.re * z.re + z.im * z.im;
  const over = (n: number): Complex => ({ re: (n * z.re) / size, im: (-n * z.im) / size });
  const slopes: Complex[] = [];
  const top = Math.ceil(Math.max(order, Math.sqrt(size))) + 30;
  let slope = over(top);
  for (let n = top; n > 0; n--) {
    if (n <= order) slopes[n] = slope;
    const ratio = { re: over(n).re + slope.re, im: over(n).im + slope.im };
    const d = ratio.re * ratio.re + ratio.im * ratio.im;
    const less = over(n - 1);
    slope = { re: less.re - ratio.re / d, im: less.im + ratio.im / d };
  }
  slopes[0] = slope;
  return slopes;
}
