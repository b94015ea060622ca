import { type Complex, complex, exponential, magnitude, multiply, scale, subtract } from '../units/complex';
import { complexErrorW } from './complexError';
import { wavelengthM } from './wavelength';

/** Fresnel-Kirchhoff parameter of an edge `heightM` above the straight line, d1M and d2M from its ends. @source ITU-R P.526, equation (26) */
export const diffractionParameter = (heightM: number, d1M: number, d2M: number, frequencyMHz: number): number =>
  heightM * Math.sqrt((2 / wavelengthM(frequencyMHz)) * (1 / d1M + 1 / d2M));

/** Field behind a knife edge over the free-space field: (1 + j)/2 times the integral of exp(-j pi t^2/2) from v to infinity. */
export function knifeEdgeRatio(v: number): Complex {
  // equals erfc(x)/2 with x = sqrt(j pi/2) v
  const a = Math.sqrt(Math.PI) / 2;
  const size = Math.abs(v) * a;
  const x = complex(size, size);
  const w = complexErrorW(complex(-x.im, x.re));
  const half = scale(multiply(exponential(complex(0, -2 * size * size)), w), 0.5);
  return v >= 0 ? half : subtract(complex(1), half);
}

/** Knife-edge loss by the exact Fresnel integral, positive dB is loss (negative just above the edge). @source ITU-R P.526, equation (30) */
export const knifeEdgeExactDb = (v: number): number => -20 * Math.log10(magnitude(knifeEdgeRatio(v)));

/** Closed form J(v) of the knife-edge loss, dB; 0 for v <= -0.78. @source ITU-R P.526, equation (31) */
export const knifeEdgeDb = (v: number): number => (v <= -0.78 ? 0 : 6.9 + 20 * Math.log10(Math.sqrt((v - 0.1) ** 2 + 1) + v - 0.1));
