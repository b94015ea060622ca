import { complex, divide, multiply, squareRoot } from '../units/complex';

/** Symmetric tridiagonal matrices of the linear elements: diagonals, and what stands between node i and i + 1. */
export type HeightMatrices = {
  readonly massOn: Float64Array;
  readonly massOff: Float64Array;
  readonly stiffOnRe: Float64Array;
  readonly stiffOnIm: Float64Array;
  readonly stiffOffRe: Float64Array;
  readonly stiffOffIm: Float64Array;
};

/**
 * Assembled element matrices: mass h (5, 1; 1, 5)/12, stiffness 1/h (1, -1; -1, 1). In the absorbing top the height is
 * stretched by s = 1 - j stretch and the unknown is sqrt(s) u, which leaves the mass real and the stiffness symmetric.
 */
export function heightMatrices(zM: Float64Array, stretch: Float64Array): HeightMatrices {
  const n = zM.length;
  const make = () => new Float64Array(n);
  const out = { massOn: make(), massOff: make(), stiffOnRe: make(), stiffOnIm: make(), stiffOffRe: make(), stiffOffIm: make() };
  const rootAt = (i: number) => squareRoot(complex(1, -stretch[i]!));
  for (let i = 0; i + 1 < n; i++) {
    const h = zM[i + 1]! - zM[i]!;
    const inverse = divide(complex(1 / h), complex(1, -(stretch[i]! + stretch[i + 1]!) / 2));
    for (const end of [i, i + 1]) {
      const on = divide(inverse, complex(1, -stretch[end]!));
      out.massOn[end]! += (5 * h) / 12;
      out.stiffOnRe[end]! += on.re;
      out.stiffOnIm[end]! += on.im;
    }
    const off = divide(inverse, multiply(rootAt(i), rootAt(i + 1)));
    out.massOff[i] = h / 12;
    out.stiffOffRe[i] = -off.re;
    out.stiffOffIm[i] = -off.im;
  }
  return out;
}
