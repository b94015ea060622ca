import { add, type Complex, complex, divide, exponential, magnitude, multiply, scale, subtract } from '../units/complex';
import { complexErrorW } from './complexError';
import { fresnelCoefficient, type Polarization, surfaceTerm } from './ground';
import { waveNumber } from './wavelength';

/** The two ends over flat ground: heights above it and horizontal distance, metres. */
export type FlatPath = { readonly distanceM: number; readonly h1M: number; readonly h2M: number };

/**
 * Field over flat ground with its surface wave, as a complex ratio to the free-space field at the slant distance
 * (phase of the direct ray and its near terms taken out): 1 + (R + (1 - R) F(w)) r1/r2 exp(-jk(r2 - r1)).
 * The textbook factor (1 - u^2 + u^4 cos^2 psi) on the surface wave is left out: against the exact Sommerfeld integral it is worse.
 * @source K. A. Norton, Proc. IRE 25 (1937) 1203-1236
 */
export function flatEarthRatio(eps: Complex, polarization: Polarization, frequencyMHz: number, path: FlatPath): Complex {
  const r1M = Math.hypot(path.distanceM, path.h1M - path.h2M);
  const r2M = Math.hypot(path.distanceM, path.h1M + path.h2M);
  const sinPsi = (path.h1M + path.h2M) / r2M;
  const reflection = fresnelCoefficient(eps, polarization, sinPsi);
  const k = waveNumber(frequencyMHz);
  const attenuation = surfaceAttenuation(eps, polarization, k * r2M, sinPsi, path.distanceM / r2M);
  const rays = { r1M, r2M, k, cosPsi: Math.max(LEAST_COS, path.distanceM / r2M) };
  const second = secondPart(polarization, reflection, attenuation, rays);
  // r2 - r1 without the loss of digits that the plain difference has far away
  const longerM = (4 * path.h1M * path.h2M) / (r1M + r2M);
  return add(complex(1), scale(multiply(second, exponential(complex(0, -k * longerM))), r1M / r2M));
}

/** Straight over the tag the surface wave is nil; this keeps the quotients finite. */
const LEAST_COS = 1e-3;

/**
 * Reflected ray and surface wave over the direct ray. V: the upright parts of both rays go as cos^2 of their angles, with the near
 * terms of a short dipole on both rays; the surface wave has neither. So the exact integral is met within 0.5 dB from 60 MHz.
 */
function secondPart(
  polarization: Polarization,
  reflection: Complex,
  attenuation: Complex,
  { r1M, r2M, k, cosPsi }: { r1M: number; r2M: number; k: number; cosPsi: number },
): Complex {
  const surface = multiply(subtract(complex(1), reflection), attenuation);
  if (polarization === 'h') return add(reflection, surface);
  const near = (r: number) => complex(1 - 1 / (k * r) ** 2, -1 / (k * r));
  const slope = (r1M / r2M) ** 2; // (cos psi2 / cos psi1)^2
  const ray = scale(multiply(reflection, near(r2M)), slope);
  return divide(add(ray, scale(surface, slope / cosPsi ** 2)), near(r1M));
}

/** Sommerfeld's attenuation F(w) = 1 - j sqrt(pi w) exp(-w) erfc(j sqrt w), w = -jkr (sin psi + Delta)^2 / (2 cos^2 psi). */
function surfaceAttenuation(eps: Complex, polarization: Polarization, kr: number, sinPsi: number, cosPsi: number): Complex {
  const term = add(complex(sinPsi), surfaceTerm(eps, polarization, cosPsi));
  const cos = Math.max(cosPsi, LEAST_COS);
  const half = Math.sqrt(kr / 4) / cos; // sqrt(-jkr/2) = sqrt(kr/4) (1 - j)
  return attenuationOf(multiply(complex(half, -half), term));
}

/** 1 - j sqrt(pi) root exp(-root^2) erfc(j root). */
function attenuationOf(root: Complex): Complex {
  const w = complexErrorW(scale(root, -1));
  const product = multiply(root, w);
  const rootPi = Math.sqrt(Math.PI);
  return complex(1 + rootPi * product.im, -rootPi * product.re);
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
