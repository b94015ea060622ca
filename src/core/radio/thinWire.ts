import { type Complex, complex, divide, multiply, scale } from '../units/complex';
import { besselJ0, besselY0 } from './besselZero';
import { knifeEdgeRatio } from './knifeEdge';
import { along, lengthOfVector, minus, plus, type Vector } from './waveVector';

/**
 * Scattering coefficient of a straight thin cylinder for the field component in the plane of ray and wire:
 * -sqrt(2j/(pi k)) J0(ka sin b) / (sin b H0(2)(ka sin b)). Derived for this project from the series for a conducting cylinder.
 */
export function wireCoefficient(k: number, radiusM: number, sinBeta: number): Complex {
  const x = k * radiusM * sinBeta;
  const hankel = complex(besselJ0(x), -besselY0(x));
  const root = Math.sqrt(2 / (Math.PI * k)) * Math.SQRT1_2; // sqrt(j) = (1 + j)/sqrt 2
  return scale(divide(multiply(complex(-root, -root), complex(besselJ0(x))), hankel), 1 / sinBeta);
}

/** A straight conductor in space, metres east, north, up. */
export type Wire = {
  readonly from: Vector;
  readonly to: Vector;
  readonly radiusM: number;
  /** Unit vector from `from` to `to`, and how far that is. */
  readonly axis: Vector;
  readonly lengthM: number;
};

export function makeWire(from: Vector, to: Vector, radiusM: number): Wire {
  const lengthM = lengthOfVector(minus(to, from));
  return { from, to, radiusM, axis: along(minus(to, from), 1 / lengthM), lengthM };
}

/** Where a wire sends a wave from one point to another, and how much of it. */
export type WireHit = {
  /** The point of equal angles on the wire's line, and its place along the wire, 0 to 1 on the wire itself. */
  readonly at: Vector;
  readonly share: number;
  readonly r1M: number;
  readonly r2M: number;
  readonly sinBeta: number;
  /**
   * Complex part of an endless wire's wave that this length gives under even light: near 1 within it, fading over half a Fresnel
   * length at its ends. `fromPart` and `toPart`, which add up to it, weigh the lights at its ends where light changes evenly between.
   */
  readonly window: Complex;
  readonly fromPart: Complex;
  readonly toPart: Complex;
};

/** Least distance of either end from a wire, metres. */
const LEAST_M = 0.5;

export function wireHit(wire: Wire, source: Vector, target: Vector, lambdaM: number): WireHit {
  const { axis, lengthM } = wire;
  const [a, b] = [placeOn(wire, source), placeOn(wire, target)];
  const s = a.alongM + ((b.alongM - a.alongM) * a.awayM) / (a.awayM + b.awayM);
  const r1M = Math.hypot(a.awayM, s - a.alongM);
  const r2M = Math.hypot(b.awayM, s - b.alongM);
  const sinBeta = Math.max(0.02, a.awayM / r1M);
  const halfM = Math.sqrt((lambdaM * r1M * r2M) / (r1M + r2M)) / sinBeta;
  const perM = Math.SQRT2 / halfM;
  return {
    at: plus(wire.from, along(axis, s)),
    share: s / lengthM,
    r1M,
    r2M,
    sinBeta,
    ...fresnelParts(-perM * s, perM * (lengthM - s)),
  };
}

/** (1 + j)/2 times the integral of exp(-j pi v^2/2) from v0 to v1, and its parts under light that falls or rises evenly from one to the other. */
function fresnelParts(v0: number, v1: number): Pick<WireHit, 'window' | 'fromPart' | 'toPart'> {
  const beyond = knifeEdgeRatio(v1);
  const before = knifeEdgeRatio(-v0);
  const window = complex(1 - beyond.re - before.re, -beyond.im - before.im);
  const [a0, a1] = [(Math.PI * v0 * v0) / 2, (Math.PI * v1 * v1) / 2];
  // the integral of v exp(-j pi v^2/2) is (j/pi) exp(-j pi v^2/2); times (1 + j)/2
  const [re, im] = [(Math.cos(a1) - Math.cos(a0)) / (2 * Math.PI), (Math.sin(a0) - Math.sin(a1)) / (2 * Math.PI)];
  const toPart = complex((-re - im - v0 * window.re) / (v1 - v0), (re - im - v0 * window.im) / (v1 - v0));
  return { window, toPart, fromPart: complex(window.re - toPart.re, window.im - toPart.im) };
}

/** A point against a wire's line: how far along from its beginning, and how far away. */
export function placeOn({ from, axis }: Wire, point: Vector): { readonly alongM: number; readonly awayM: number } {
  const [x, y, z] = [point[0] - from[0], point[1] - from[1], point[2] - from[2]];
  const alongM = x * axis[0] + y * axis[1] + z * axis[2];
  return { alongM, awayM: Math.max(LEAST_M, Math.sqrt(Math.max(0, x * x + y * y + z * z - alongM * alongM))) };
}

/** Spreading of a wire's wave: sqrt(r1 / (r2 (r1 + r2))). */
export const wireSpread = (r1M: number, r2M: number): number => Math.sqrt(r1M / (r2M * (r1M + r2M)));
