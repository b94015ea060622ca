import type { GroundClassId } from '../scenario/schema';
import { add, type Complex, complex, divide, magnitude, squareRoot, subtract } from '../units/complex';
import { LIGHT_M_MHZ, wavelengthM, waveNumber } from './wavelength';

export type Polarization = 'v' | 'h';

/** Electrical ground: relative permittivity and conductivity in S/m. */
export type Ground = { readonly epsR: number; readonly sigma: number };

/** ITU-R P.527 classes, values from memory. */
export const GROUND: { readonly [id in GroundClassId]: Ground } = {
  'very-dry': { epsR: 3, sigma: 1e-4 },
  'medium-dry': { epsR: 15, sigma: 1e-3 },
  wet: { epsR: 30, sigma: 1e-2 },
  'fresh-water': { epsR: 80, sigma: 3e-3 },
};

/** Complex relative permittivity eps - j sigma / (omega eps0). @source ITU-R P.527, equation (5) */
export function permittivity(ground: Ground, frequencyMHz: number): Complex {
  // 1 / (omega eps0) = mu0 c lambda / (2 pi) = 2e-7 c lambda, about 59.96 lambda
  return complex(ground.epsR, -2e-7 * LIGHT_M_MHZ * 1e6 * wavelengthM(frequencyMHz) * ground.sigma);
}

/** Normalised surface impedance (V) or admittance (H) met at grazing angle psi: sqrt(eps - cos^2) / eps, or without the division. */
export function surfaceTerm(eps: Complex, polarization: Polarization, cosPsi = 1): Complex {
  const root = squareRoot(subtract(eps, complex(cosPsi * cosPsi)));
  return polarization === 'v' ? divide(root, eps) : root;
}

/**
 * Fresnel reflection coefficient of flat ground for the field component in use: E along the horizontal (H), the component in
 * the plane of incidence with +1 over a perfect conductor (V). @source ITU-R P.527, equations (32) and (33)
 */
export function fresnelCoefficient(eps: Complex, polarization: Polarization, sinPsi: number): Complex {
  const term = surfaceTerm(eps, polarization, Math.sqrt(Math.max(0, 1 - sinPsi * sinPsi)));
  return divide(subtract(complex(sinPsi), term), add(complex(sinPsi), term));
}

/** Share of a specular field that rough ground keeps: exp(-g^2/2), g = 4 pi sigma sin(psi) / lambda. @source W. S. Ament, Proc. IRE 41 (1953) */
export function roughnessFactor(heightDeviationM: number, sinPsi: number, frequencyMHz: number): number {
  const g = 2 * waveNumber(frequencyMHz) * heightDeviationM * sinPsi;
  return Math.exp(-0.5 * g * g);
}

/** The complex height z of the far asymptote |2k/d (h1 - jz)(h2 - jz)|: 1 / (k times the surface term), metres. */
export function complexHeightM(eps: Complex, polarization: Polarization, frequencyMHz: number): Complex {
  return divide(complex(1 / waveNumber(frequencyMHz)), surfaceTerm(eps, polarization));
}

/** Minimum effective antenna height, metres: below it lowering the antenna changes little. @source Bullington, Proc. IRE 35 (1947) */
export const minimumEffectiveHeightM = (eps: Complex, polarization: Polarization, frequencyMHz: number): number =>
  magnitude(complexHeightM(eps, polarization, frequencyMHz));

/** Pseudo-Brewster grazing angle, where the vertical coefficient is least, radians. Near asin(1 / sqrt|eps + 1|), closed in on by trial. */
export function pseudoBrewsterRad(eps: Complex): number {
  const size = (rad: number) => magnitude(fresnelCoefficient(eps, 'v', Math.sin(rad))) ** 2;
  let at = Math.asin(1 / Math.sqrt(magnitude(add(eps, complex(1)))));
  for (let step = at / 10; step > 1e-9; step /= 2) {
    while (size(at - step) < size(at)) at -= step;
    while (size(at + step) < size(at)) at += step;
  }
  return at;
}
