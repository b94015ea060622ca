import type { Complex } from '../units/complex';
import type { HeightGrid } from './heightGrid';
import { heightMatrices } from './heightMatrices';
import { eliminateDown, makePoleSolve, massTimes, POLES, type PoleSolve, setFoot, setSolve, substituteUp } from './poleSolve';

/**
 * The march of the terrain field: du/dx = -(j/2k) d2u/dz2 over an impedance ground, du/dz = jk Delta u at z = 0, for both
 * polarizations at once. Heights by linear elements with the mass matrix (1/12, 10/12, 1/12), fourth order where nodes are
 * equally spaced; range by the (3, 4) Pade form of the exponential, of the family of
 * Crank-Nicolson, in partial fractions: four tridiagonal solves on one right-hand side.
 * Elimination runs from the top down, so that the ground, alone different between polarizations and places, enters only last.
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

export function makeTerrainMarch({ zM, stretch }: HeightGrid, k: number): TerrainMarch {
  const n = zM.length;
  const field = new Float64Array(4 * n);
  const right = new Float64Array(4 * n);
  const work = new Float64Array(4 * n);
  const matrices = heightMatrices(zM, stretch);
  let dx = 0;
  const ground = { vRe: 0, vIm: 0, hRe: 0, hIm: 0 };
  const solves: readonly PoleSolve[] = POLES.map((pole) => makePoleSolve(pole, n));

  function setStep(dxM: number): void {
    if (dxM === dx) return;
    dx = dxM;
    for (const solve of solves) {
      setSolve(solve, matrices, dx, k);
      setFoot(solve, dx, ground);
    }
  }

  function setGround(v: Complex, h: Complex): void {
    if (v.re === ground.vRe && v.im === ground.vIm && h.re === ground.hRe && h.im === ground.hIm) return;
    ground.vRe = v.re;
    ground.vIm = v.im;
    ground.hRe = h.re;
    ground.hIm = h.im;
    for (const solve of solves) setFoot(solve, dx, ground);
  }

  function advance(count: number): void {
    for (let c = 0; c < count; c++) {
      massTimes(field, matrices.massOn, matrices.massOff, right, n);
      field.fill(0);
      for (const { ratio, inverse, foot } of solves) {
        eliminateDown(right, ratio, work, n);
        substituteUp(ratio, inverse, foot, work, field, n);
      }
    }
  }

  return { field, setStep, setGround, advance, bend: (slopeChange) => bendField(field, zM, k * slopeChange) };
}

/** Turns the phase at each height by `turn` radians a metre. */
function bendField(field: Float64Array, zM: Float64Array, turn: number): void {
  if (turn === 0) return;
  let re = 1;
  let im = 0;
  let stepM = 0;
  let qRe = 1;
  let qIm = 0;
  for (let i = 1; i < zM.length; i++) {
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
