import { type Complex, complex, divide, multiply, scale } from '../units/complex';
import { besselJ0, besselY0 } from './besselZero';
import { knifeEdgeRatio } from './knifeEdge';
import { along, cross, dot, lengthOfVector, minus, plus, unit, type Vector } from './waveVector';

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
export type Wire = { readonly from: Vector; readonly to: Vector; readonly radiusM: number };

/** Where a wire sends a wave from one point to another, and how much of it. */
export type WireHit = {
  /** The point of equal angles on the wire's line, and its place along the wire, 0 to 1 on the wire itself. */
  readonly at: Vector;
  readonly share: number;
  readonly r1M: number;
  readonly r2M: number;
  readonly sinBeta: number;
  /** Complex part of an endless wire's wave that this length gives: near 1 within it, fading over half a Fresnel length at its ends. */
  readonly window: Complex;
};

/** Least distance of either end from a wire, metres. */
const LEAST_M = 0.5;

export function wireHit(wire: Wire, source: Vector, target: Vector, lambdaM: number): WireHit {
  const lengthM = lengthOfVector(minus(wire.to, wire.from));
  const axis = unit(minus(wire.to, wire.from));
  const [a, b] = [fromAxis(wire.from, axis, source), fromAxis(wire.from, axis, target)];
  const s = a.alongM + ((b.alongM - a.alongM) * a.awayM) / (a.awayM + b.awayM);
  const r1M = Math.hypot(a.awayM, s - a.alongM);
  const r2M = Math.hypot(b.awayM, s - b.alongM);
  const sinBeta = Math.max(0.02, a.awayM / r1M);
  const halfM = Math.sqrt((lambdaM * r1M * r2M) / (r1M + r2M)) / sinBeta;
  const beyond = knifeEdgeRatio((Math.SQRT2 * (lengthM - s)) / halfM);
  const before = knifeEdgeRatio((Math.SQRT2 * s) / halfM);
  return {
    at: plus(wire.from, along(axis, s)),
    share: s / lengthM,
    r1M,
    r2M,
    sinBeta,
    window: complex(1 - beyond.re - before.re, -beyond.im - before.im),
  };
}

function fromAxis(origin: Vector, axis: Vector, point: Vector): { alongM: number; awayM: number } {
  const from = minus(point, origin);
  return { alongM: dot(from, axis), awayM: Math.max(LEAST_M, lengthOfVector(cross(from, axis))) };
}

/** Spreading of a wire's wave: sqrt(r1 / (r2 (r1 + r2))). */
export const wireSpread = (r1M: number, r2M: number): number => Math.sqrt(r1M / (r2M * (r1M + r2M)));
