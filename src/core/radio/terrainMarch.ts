import type { Complex } from '../units/complex';
import type { HeightGrid } from './heightGrid';
import { heightMatrices } from './heightMatrices';

/**
 * The march of the terrain field: du/dx = -(j/2k) d2u/dz2 over an impedance ground, du/dz = jk Delta u at z = 0, for both
 * polarizations at once. Heights by linear elements with the mass matrix (1/12, 10/12, 1/12), fourth order where nodes are
 * equally spaced; range by the (3, 4) Pade form of the exponential, of the family of
 * Crank-Nicolson, in partial fractions: four tridiagonal solves on one right-hand side.
 * Elimination runs from the top down, so that the ground, alone different between polarizations and places, enters only last.
 * The loops are long on purpose: four recurrences side by side keep the processor busy, and nothing is allocated in them.
 */
export type TerrainMarch = {
  /** Interleaved V re, V im, H re, H im per node. */
  readonly field: Float64Array;
  /** Sets the range step, metres. */
  readonly setStep: (dxM: number) => void;
  /** Sets the ground's surface terms (see `surfaceTerm`). */
  readonly setGround: (v: Complex, h: Complex) => void;
  /** Marches `count` steps. */
  readonly advance: (count: number) => void;
  /** Passes from one facet to the next, whose slope is greater by `slopeChange`: u exp(jk dslope z), the shift map. */
  readonly bend: (slopeChange: number) => void;
};

/**
 * One pole of each conjugate pair of the (3, 4) Pade form, exp(s) = sum of w/(1 - b s) + w* /(1 - b* s). It is nil for waves that
 * the steps cannot follow, so that what bends scatter into them dies instead of standing over the ground.
 */
const POLES: readonly Pole[] = [
  { b: { re: 0.09705048233513174, im: -0.1441824711215367 }, weight: { re: -0.7013771353770453, im: -2.83986612089225 } },
  { b: { re: 0.1886638033791539, im: -0.0617744168968908 }, weight: { re: 1.201377135377065, im: 12.15505645082922 } },
];

export function makeTerrainMarch({ zM, stretch }: HeightGrid, k: number): TerrainMarch {
  const n = zM.length;
  const field = new Float64Array(4 * n);
  const work = new Float64Array(8 * n);
  const { massOn, massOff, stiffOnRe, stiffOnIm, stiffOffRe, stiffOffIm } = heightMatrices(zM, stretch);
  let dx = 0;
  const ground = { vRe: 0, vIm: 0, hRe: 0, hIm: 0 };
  const factors = POLES.map((pole) => makeFactor(pole, n));
  const next = new Float64Array(4 * n);

  function setStep(dxM: number): void {
    if (dxM === dx) return;
    dx = dxM;
    for (const factor of factors) {
      factorize(factor, 0);
      factorize(factor, 1);
    }
    setFoot();
  }

  /** T = M - b dx (j/2k) K, eliminated from the top. */
  function factorize({ b, solve, bare }: Factor, pole: number): void {
    // -b dx j/2k
    const fRe = ((pole === 0 ? b.im : -b.im) * dx) / (2 * k);
    const fIm = (-b.re * dx) / (2 * k);
    let tRe = 0;
    let tIm = 0;
    for (let i = n - 1; i >= 0; i--) {
      let onRe = massOn[i]! + fRe * stiffOnRe[i]! - fIm * stiffOnIm[i]!;
      let onIm = fRe * stiffOnIm[i]! + fIm * stiffOnRe[i]!;
      if (i < n - 1) {
        const eRe = massOff[i]! + fRe * stiffOffRe[i]! - fIm * stiffOffIm[i]!;
        const eIm = fRe * stiffOffIm[i]! + fIm * stiffOffRe[i]!;
        const size = tRe * tRe + tIm * tIm;
        const lRe = (eRe * tRe + eIm * tIm) / size;
        const lIm = (eIm * tRe - eRe * tIm) / size;
        solve[8 * i + 4 * pole] = lRe;
        solve[8 * i + 4 * pole + 1] = lIm;
        onRe -= lRe * eRe - lIm * eIm;
        onIm -= lRe * eIm + lIm * eRe;
      }
      tRe = onRe;
      tIm = onIm;
      const size = tRe * tRe + tIm * tIm;
      solve[8 * i + 4 * pole + 2] = tRe / size;
      solve[8 * i + 4 * pole + 3] = -tIm / size;
    }
    bare[2 * pole] = tRe;
    bare[2 * pole + 1] = tIm;
  }

  /** The ground adds b dx Delta/2 to the lowest diagonal. */
  function setFoot(): void {
    for (const { b, bare, foot } of factors) {
      for (let part = 0; part < 4; part++) {
        const pole = part >> 1;
        const [gRe, gIm] = part % 2 === 0 ? [ground.vRe, ground.vIm] : [ground.hRe, ground.hIm];
        const br = (b.re * dx) / 2;
        const bi = ((pole === 0 ? b.im : -b.im) * dx) / 2;
        const re = bare[2 * pole]! + br * gRe - bi * gIm;
        const im = bare[2 * pole + 1]! + br * gIm + bi * gRe;
        const size = re * re + im * im;
        foot[2 * part] = re / size;
        foot[2 * part + 1] = -im / size;
      }
    }
  }

  function setGround(v: Complex, h: Complex): void {
    if (v.re === ground.vRe && v.im === ground.vIm && h.re === ground.hRe && h.im === ground.hIm) return;
    ground.vRe = v.re;
    ground.vIm = v.im;
    ground.hRe = h.re;
    ground.hIm = h.im;
    setFoot();
  }

  function advance(count: number): void {
    for (let c = 0; c < count; c++) {
      next.fill(0);
      for (const factor of factors) {
        sweepDown(factor.solve);
        sweepUp(factor);
      }
      field.set(next);
    }
  }

  function sweepDown(solve: Float64Array): void {
    let y0 = 0;
    let y1 = 0;
    let y2 = 0;
    let y3 = 0;
    let y4 = 0;
    let y5 = 0;
    let y6 = 0;
    let y7 = 0;
    let aboveOff = 0;
    let a0 = 0;
    let a1 = 0;
    let a2 = 0;
    let a3 = 0;
    let u0 = field[4 * n - 4]!;
    let u1 = field[4 * n - 3]!;
    let u2 = field[4 * n - 2]!;
    let u3 = field[4 * n - 1]!;
    for (let i = n - 1; i >= 0; i--) {
      const on = massOn[i]!;
      const below = i > 0 ? massOff[i - 1]! : 0;
      const at = i > 0 ? 4 * i - 4 : 0;
      const b0 = field[at]!;
      const b1 = field[at + 1]!;
      const b2 = field[at + 2]!;
      const b3 = field[at + 3]!;
      const r0 = on * u0 + aboveOff * a0 + below * b0;
      const r1 = on * u1 + aboveOff * a1 + below * b1;
      const r2 = on * u2 + aboveOff * a2 + below * b2;
      const r3 = on * u3 + aboveOff * a3 + below * b3;
      const s = 8 * i;
      const p = solve[s]!;
      const q = solve[s + 1]!;
      const v = solve[s + 4]!;
      const w = solve[s + 5]!;
      const n0 = r0 - (p * y0 - q * y1);
      y1 = r1 - (p * y1 + q * y0);
      y0 = n0;
      const n2 = r2 - (p * y2 - q * y3);
      y3 = r3 - (p * y3 + q * y2);
      y2 = n2;
      const n4 = r0 - (v * y4 - w * y5);
      y5 = r1 - (v * y5 + w * y4);
      y4 = n4;
      const n6 = r2 - (v * y6 - w * y7);
      y7 = r3 - (v * y7 + w * y6);
      y6 = n6;
      work[s] = y0;
      work[s + 1] = y1;
      work[s + 2] = y2;
      work[s + 3] = y3;
      work[s + 4] = y4;
      work[s + 5] = y5;
      work[s + 6] = y6;
      work[s + 7] = y7;
      a0 = u0;
      a1 = u1;
      a2 = u2;
      a3 = u3;
      u0 = b0;
      u1 = b1;
      u2 = b2;
      u3 = b3;
      aboveOff = below;
    }
  }

  function sweepUp({ solve, foot, weight }: Factor): void {
    const g0 = weight.re;
    const g1 = weight.im;
    let x0 = work[0]! * foot[0]! - work[1]! * foot[1]!;
    let x1 = work[0]! * foot[1]! + work[1]! * foot[0]!;
    let x2 = work[2]! * foot[2]! - work[3]! * foot[3]!;
    let x3 = work[2]! * foot[3]! + work[3]! * foot[2]!;
    let x4 = work[4]! * foot[4]! - work[5]! * foot[5]!;
    let x5 = work[4]! * foot[5]! + work[5]! * foot[4]!;
    let x6 = work[6]! * foot[6]! - work[7]! * foot[7]!;
    let x7 = work[6]! * foot[7]! + work[7]! * foot[6]!;
    next[0]! += g0 * (x0 + x4) - g1 * (x1 - x5);
    next[1]! += g0 * (x1 + x5) + g1 * (x0 - x4);
    next[2]! += g0 * (x2 + x6) - g1 * (x3 - x7);
    next[3]! += g0 * (x3 + x7) + g1 * (x2 - x6);
    let p = solve[0]!;
    let q = solve[1]!;
    let v = solve[4]!;
    let w = solve[5]!;
    for (let i = 1; i < n; i++) {
      const s = 8 * i;
      const d = solve[s + 2]!;
      const e = solve[s + 3]!;
      const f = solve[s + 6]!;
      const g = solve[s + 7]!;
      const y0 = work[s]!;
      const y1 = work[s + 1]!;
      const y2 = work[s + 2]!;
      const y3 = work[s + 3]!;
      const y4 = work[s + 4]!;
      const y5 = work[s + 5]!;
      const y6 = work[s + 6]!;
      const y7 = work[s + 7]!;
      const n0 = y0 * d - y1 * e - (p * x0 - q * x1);
      x1 = y0 * e + y1 * d - (p * x1 + q * x0);
      x0 = n0;
      const n2 = y2 * d - y3 * e - (p * x2 - q * x3);
      x3 = y2 * e + y3 * d - (p * x3 + q * x2);
      x2 = n2;
      const n4 = y4 * f - y5 * g - (v * x4 - w * x5);
      x5 = y4 * g + y5 * f - (v * x5 + w * x4);
      x4 = n4;
      const n6 = y6 * f - y7 * g - (v * x6 - w * x7);
      x7 = y6 * g + y7 * f - (v * x7 + w * x6);
      x6 = n6;
      const at = 4 * i;
      next[at]! += g0 * (x0 + x4) - g1 * (x1 - x5);
      next[at + 1]! += g0 * (x1 + x5) + g1 * (x0 - x4);
      next[at + 2]! += g0 * (x2 + x6) - g1 * (x3 - x7);
      next[at + 3]! += g0 * (x3 + x7) + g1 * (x2 - x6);
      p = solve[s]!;
      q = solve[s + 1]!;
      v = solve[s + 4]!;
      w = solve[s + 5]!;
    }
  }

  function bend(slopeChange: number): void {
    const turn = k * slopeChange;
    if (turn === 0) return;
    let re = 1;
    let im = 0;
    let stepM = 0;
    let qRe = 1;
    let qIm = 0;
    for (let i = 1; i < n; i++) {
      const h = zM[i]! - zM[i - 1]!;
      // equal spacing to rounding: the same rotation serves, renewed where spacing changes
      if (Math.abs(h - stepM) > 1e-9) {
        stepM = h;
        qRe = Math.cos(turn * h);
        qIm = Math.sin(turn * h);
      }
      const next = re * qRe - im * qIm;
      im = re * qIm + im * qRe;
      re = next;
      const at = 4 * i;
      const v0 = field[at]!;
      const v1 = field[at + 1]!;
      const h0 = field[at + 2]!;
      const h1 = field[at + 3]!;
      field[at] = v0 * re - v1 * im;
      field[at + 1] = v0 * im + v1 * re;
      field[at + 2] = h0 * re - h1 * im;
      field[at + 3] = h0 * im + h1 * re;
    }
  }

  return { field, setStep, setGround, advance, bend };
}

type Pole = { readonly b: Complex; readonly weight: Complex };

/** A pole and its conjugate, factorized. */
type Factor = Pole & {
  /** Per node: l and 1/t of the pole, then of its conjugate. */
  readonly solve: Float64Array;
  /** 1/t at the ground: pole V, H, conjugate V, H. */
  readonly foot: Float64Array;
  /** Diagonal at the ground after elimination, before the ground's own term. */
  readonly bare: Float64Array;
};

const makeFactor = (pole: Pole, n: number): Factor => ({
  ...pole,
  solve: new Float64Array(8 * n),
  foot: new Float64Array(8),
  bare: new Float64Array(4),
});
