import type { Complex } from '../units/complex';
import type { HeightMatrices } from './heightMatrices';

export type Pole = { readonly b: Complex; readonly weight: Complex };

/**
 * One pole of each conjugate pair of the (3, 4) Pade form, exp(s) = sum of w/(1 - b s) + w* /(1 - b* s). It is nil for waves that
 * the steps cannot follow, so that what bends scatter into them dies instead of standing over the ground.
 */
const HALF: readonly Pole[] = [
  { b: { re: 0.09705048233513174, im: -0.1441824711215367 }, weight: { re: -0.7013771353770453, im: -2.83986612089225 } },
  { b: { re: 0.1886638033791539, im: -0.0617744168968908 }, weight: { re: 1.201377135377065, im: 12.15505645082922 } },
];

const conjugate = ({ re, im }: Complex): Complex => ({ re, im: -im });

/** All four poles. */
export const POLES: readonly Pole[] = HALF.flatMap((pole) => [pole, { b: conjugate(pole.b), weight: conjugate(pole.weight) }]);

/** The tridiagonal system of one pole, eliminated from the top down. Interleaved re, im. */
export type PoleSolve = Pole & {
  /** Per node: what a node is off the one above. */
  readonly ratio: Float64Array;
  /** Per node: the pole's weight over the diagonal that is left. */
  readonly inverse: Float64Array;
  /** The same at the ground, V and then H, with the ground's own term. */
  readonly foot: Float64Array;
  /** Diagonal at the ground after elimination, before the ground's own term. */
  readonly bare: Float64Array;
};

export const makePoleSolve = (pole: Pole, n: number): PoleSolve => ({
  ...pole,
  ratio: new Float64Array(2 * n),
  inverse: new Float64Array(2 * n),
  foot: new Float64Array(4),
  bare: new Float64Array(2),
});

/** T = M - b dx (j/2k) K, eliminated from the top. */
export function setSolve({ b, weight, ratio, inverse, bare }: PoleSolve, m: HeightMatrices, dx: number, k: number): void {
  const n = m.massOn.length;
  // -b dx j/2k
  const fRe = (b.im * dx) / (2 * k);
  const fIm = (-b.re * dx) / (2 * k);
  let tRe = 0;
  let tIm = 0;
  for (let i = n - 1; i >= 0; i--) {
    let onRe = m.massOn[i]! + fRe * m.stiffOnRe[i]! - fIm * m.stiffOnIm[i]!;
    let onIm = fRe * m.stiffOnIm[i]! + fIm * m.stiffOnRe[i]!;
    if (i < n - 1) {
      const eRe = m.massOff[i]! + fRe * m.stiffOffRe[i]! - fIm * m.stiffOffIm[i]!;
      const eIm = fRe * m.stiffOffIm[i]! + fIm * m.stiffOffRe[i]!;
      const size = tRe * tRe + tIm * tIm;
      const lRe = (eRe * tRe + eIm * tIm) / size;
      const lIm = (eIm * tRe - eRe * tIm) / size;
      ratio[2 * i] = lRe;
      ratio[2 * i + 1] = lIm;
      onRe -= lRe * eRe - lIm * eIm;
      onIm -= lRe * eIm + lIm * eRe;
    }
    tRe = onRe;
    tIm = onIm;
    over(weight, tRe, tIm, inverse, 2 * i);
  }
  bare[0] = tRe;
  bare[1] = tIm;
}

/** The ground adds b dx Delta/2 to the lowest diagonal. */
export function setFoot(
  { b, weight, bare, foot }: PoleSolve,
  dx: number,
  ground: { readonly vRe: number; readonly vIm: number; readonly hRe: number; readonly hIm: number },
): void {
  const bRe = (b.re * dx) / 2;
  const bIm = (b.im * dx) / 2;
  const { vRe, vIm, hRe, hIm } = ground;
  over(weight, bare[0]! + bRe * vRe - bIm * vIm, bare[1]! + bRe * vIm + bIm * vRe, foot, 0);
  over(weight, bare[0]! + bRe * hRe - bIm * hIm, bare[1]! + bRe * hIm + bIm * hRe, foot, 2);
}

/** Puts a complex quotient at an index. */
function over(numerator: Complex, re: number, im: number, to: Float64Array, at: number): void {
  const size = re * re + im * im;
  to[at] = (numerator.re * re + numerator.im * im) / size;
  to[at + 1] = (numerator.im * re - numerator.re * im) / size;
}

// The three loops below are where a radial's time goes (`tests/bench/radio.ts`). Each is kept short, with one pole and its arrays as
// arguments: short loops are compiled with their arrays' ends known, longer ones that take two poles at once are not and run slower.

/** Mass matrix times the field, both polarizations. */
export function massTimes(field: Float64Array, massOn: Float64Array, massOff: Float64Array, to: Float64Array, n: number): void {
  let below = 0;
  let [a0, a1, a2, a3] = [0, 0, 0, 0];
  let u0 = field[0]!;
  let u1 = field[1]!;
  let u2 = field[2]!;
  let u3 = field[3]!;
  for (let i = 0; i < n; i++) {
    const at = 4 * i;
    const isTop = i === n - 1;
    const on = massOn[i]!;
    const above = isTop ? 0 : massOff[i]!;
    const next = isTop ? at : at + 4;
    const b0 = field[next]!;
    const b1 = field[next + 1]!;
    const b2 = field[next + 2]!;
    const b3 = field[next + 3]!;
    to[at] = on * u0 + above * b0 + below * a0;
    to[at + 1] = on * u1 + above * b1 + below * a1;
    to[at + 2] = on * u2 + above * b2 + below * a2;
    to[at + 3] = on * u3 + above * b3 + below * a3;
    a0 = u0;
    a1 = u1;
    a2 = u2;
    a3 = u3;
    u0 = b0;
    u1 = b1;
    u2 = b2;
    u3 = b3;
    below = above;
  }
}

/** Right-hand side with what stands above each node eliminated. */
export function eliminateDown(right: Float64Array, ratio: Float64Array, work: Float64Array, n: number): void {
  let y0 = 0;
  let y1 = 0;
  let y2 = 0;
  let y3 = 0;
  for (let i = n - 1; i >= 0; i--) {
    const p = ratio[2 * i]!;
    const q = ratio[2 * i + 1]!;
    const at = 4 * i;
    const n0 = right[at]! - (p * y0 - q * y1);
    y1 = right[at + 1]! - (p * y1 + q * y0);
    y0 = n0;
    const n2 = right[at + 2]! - (p * y2 - q * y3);
    y3 = right[at + 3]! - (p * y3 + q * y2);
    y2 = n2;
    work[at] = y0;
    work[at + 1] = y1;
    work[at + 2] = y2;
    work[at + 3] = y3;
  }
}

/** Solves from the ground up and adds the pole's weighed part to the field. */
export function substituteUp(
  ratio: Float64Array,
  inverse: Float64Array,
  foot: Float64Array,
  work: Float64Array,
  field: Float64Array,
  n: number,
): void {
  let x0 = work[0]! * foot[0]! - work[1]! * foot[1]!;
  let x1 = work[0]! * foot[1]! + work[1]! * foot[0]!;
  let x2 = work[2]! * foot[2]! - work[3]! * foot[3]!;
  let x3 = work[2]! * foot[3]! + work[3]! * foot[2]!;
  field[0]! += x0;
  field[1]! += x1;
  field[2]! += x2;
  field[3]! += x3;
  let p = ratio[0]!;
  let q = ratio[1]!;
  for (let i = 1; i < n; i++) {
    const d = inverse[2 * i]!;
    const e = inverse[2 * i + 1]!;
    const at = 4 * i;
    const y0 = work[at]!;
    const y1 = work[at + 1]!;
    const y2 = work[at + 2]!;
    const y3 = work[at + 3]!;
    const n0 = y0 * d - y1 * e - (p * x0 - q * x1);
    x1 = y0 * e + y1 * d - (p * x1 + q * x0);
    x0 = n0;
    const n2 = y2 * d - y3 * e - (p * x2 - q * x3);
    x3 = y2 * e + y3 * d - (p * x3 + q * x2);
    x2 = n2;
    field[at]! += x0;
    field[at + 1]! += x1;
    field[at + 2]! += x2;
    field[at + 3]! += x3;
    p = ratio[2 * i]!;
    q = ratio[2 * i + 1]!;
  }
}
