import { add, type Complex, complex, divide, exponential, magnitude, multiply, scale, subtract } from '../units/complex';
import type { Polarization } from './ground';
import { attenuationOf, LEAST_COS, nortonReflection } from './groundReflection';
import { groundWaveRest } from './groundWaveRest';
import { tabled } from './reflectedTable';
import { waveNumber } from './wavelength';

/** The two ends over flat ground: heights above it and horizontal distance, metres. */
export type FlatPath = { readonly distanceM: number; readonly h1M: number; readonly h2M: number };

/**
 * Field over flat ground with its surface wave, as a complex ratio to the free-space field at the slant distance
 * (phase of the direct ray and its near terms taken out): 1 + (R + (1 - R) F(w)) r1/r2 exp(-jk(r2 - r1)), a short dipole's near
 * terms on both rays, and near the tag what the exact Sommerfeld integral has beyond that form.
 * The textbook factor (1 - u^2 + u^4 cos^2 psi) on the surface wave is left out: against the integral it is worse.
 * @source K. A. Norton, Proc. IRE 25 (1937) 1203-1236
 */
export function flatEarthRatio(eps: Complex, polarization: Polarization, frequencyMHz: number, path: FlatPath): Complex {
  const k = waveNumber(frequencyMHz);
  const rays = raysOf(k, path);
  return withReflection(reflected(eps, polarization, k, path.distanceM, path.h1M + path.h2M), polarization, rays);
}

/** The same for both polarizations, what the ground sends back read from a table: for the many ways from wires and supports of power lines. */
export function tabledEarthRatios(eps: Complex, frequencyMHz: number, path: FlatPath): { readonly [part in Polarization]: Complex } {
  const k = waveNumber(frequencyMHz);
  const rays = raysOf(k, path);
  const { v, h } = reflectedFromTable(eps, k, path.distanceM, path.h1M + path.h2M);
  return { v: withReflection(v, 'v', rays), h: withReflection(h, 'h', rays) };
}

/** What the ground sends back, over exp(-jkr)/r of the image. */
function reflected(eps: Complex, polarization: Polarization, k: number, distanceM: number, heightM: number): Complex {
  const r2M = Math.hypot(distanceM, heightM);
  const cosPsi = Math.max(LEAST_COS, distanceM / r2M);
  const { ray, surface } = nortonReflection(eps, polarization, k * r2M, heightM / r2M, distanceM / r2M);
  return add(ray, add(surface, groundWaveRest(eps, polarization, k * r2M * cosPsi, k * heightM)));
}

const reflectedFromTable = tabled(reflected);

/** What both polarizations share of the direct ray and that by the ground. */
type Rays = {
  readonly r1M: number;
  readonly r2M: number;
  readonly cosPsi: number;
  /** A short dipole's near terms on the direct ray, and the turn of the longer way. */
  readonly near: Complex;
  readonly turn: Complex;
};

function raysOf(k: number, { distanceM, h1M, h2M }: FlatPath): Rays {
  const r1M = Math.sqrt(distanceM * distanceM + (h1M - h2M) * (h1M - h2M));
  const r2M = Math.sqrt(distanceM * distanceM + (h1M + h2M) * (h1M + h2M));
  // r2 - r1 without the loss of digits that the plain difference has far away
  const longerM = (4 * h1M * h2M) / (r1M + r2M);
  return {
    r1M,
    r2M,
    cosPsi: Math.max(LEAST_COS, distanceM / r2M),
    near: complex(1 - 1 / (k * r1M) ** 2, -1 / (k * r1M)),
    turn: exponential(complex(0, -k * longerM)),
  };
}

function withReflection(whole: Complex, polarization: Polarization, { r1M, r2M, cosPsi, near, turn }: Rays): Complex {
  // upright fields are compared with that of the direct ray, which goes as the square of the cosine of its angle
  const upright = polarization === 'v' ? (r1M / r2M / cosPsi) ** 2 : 1;
  const second = divide(scale(whole, upright), near);
  return add(complex(1), scale(multiply(second, turn), r1M / r2M));
}

/**
 * The same field as a narrow-angle wave sees it: heights enter only through (h1 + h2)/d and path lengths to second order, and
 * the surface term is the grazing one. It solves the parabolic equation over flat impedance ground exactly, so that a march
 * may begin from it at any distance. Ratio to the free-space field on the axis, phase exp(-jkd) taken out. Derived for this project.
 */
export function narrowAngleRatio(surface: Complex, k: number, path: FlatPath): Complex {
  const { distanceM, h1M, h2M } = path;
  const sine = complex((h1M + h2M) / distanceM);
  const denominator = add(sine, surface);
  const reflection = divide(subtract(sine, surface), denominator);
  const half = Math.sqrt((k * distanceM) / 4);
  const attenuation = attenuationOf(multiply(complex(half, -half), denominator));
  const second = add(reflection, multiply(subtract(complex(1), reflection), attenuation));
  const first = exponential(complex(0, (-k * (h1M - h2M) ** 2) / (2 * distanceM)));
  return add(first, multiply(second, exponential(complex(0, (-k * (h1M + h2M) ** 2) / (2 * distanceM)))));
}

/** Loss over flat ground beyond free space over the slant distance, positive dB is loss. */
export const flatEarthExcessDb = (eps: Complex, polarization: Polarization, frequencyMHz: number, path: FlatPath): number =>
  -20 * Math.log10(magnitude(flatEarthRatio(eps, polarization, frequencyMHz, path)));

/** Plane-earth loss 40 log d - 20 log h1 h2, dB: the far limit for ideal reflection. @source Bullington, Proc. IRE 35 (1947) */
export const planeEarthLossDb = (distanceM: number, h1M: number, h2M: number): number =>
  40 * Math.log10(distanceM) - 20 * Math.log10(h1M * h2M);
