import { add, type Complex, complex, divide, multiply, scale, subtract } from '../units/complex';
import { complexErrorW } from './complexError';
import { fresnelCoefficient, type Polarization, surfaceTerm } from './ground';
import { rootOf, type ScaledHankel, scaledHankel } from './scaledHankel';

/** Straight over the tag the surface wave is nil; this keeps the quotients finite. */
export const LEAST_COS = 1e-3;

/** What flat ground sends back, over exp(-jkr)/r of the image: of an upright dipole its upright field, of a level one its level field broadside. */
export type Reflected = { readonly ray: Complex; readonly surface: Complex };

/**
 * Norton's closed form, parted into Fresnel's reflection of the dipole with its near terms and the surface wave (1 - R) F(w).
 * `kr` is the wave number times the way from the image. @source K. A. Norton, Proc. IRE 25 (1937) 1203-1236
 */
export function nortonReflection(eps: Complex, polarization: Polarization, kr: number, sinPsi: number, cosPsi: number): Reflected {
  const reflection = fresnelCoefficient(eps, polarization, sinPsi);
  const near = complex(1 - 1 / (kr * kr), -1 / kr);
  const attenuation = surfaceAttenuation(eps, polarization, kr, sinPsi, cosPsi);
  return {
    ray: scale(multiply(reflection, near), polarization === 'v' ? cosPsi * cosPsi : 1),
    surface: multiply(subtract(complex(1), reflection), attenuation),
  };
}

/** Sommerfeld's attenuation F(w) = 1 - j sqrt(pi w) exp(-w) erfc(j sqrt w), w = -jkr (sin psi + Delta)^2 / (2 cos^2 psi). */
function surfaceAttenuation(eps: Complex, polarization: Polarization, kr: number, sinPsi: number, cosPsi: number): Complex {
  const term = add(complex(sinPsi), surfaceTerm(eps, polarization, cosPsi));
  const half = Math.sqrt(kr / 4) / Math.max(cosPsi, LEAST_COS); // sqrt(-jkr/2) = sqrt(kr/4) (1 - j)
  return attenuationOf(multiply(complex(half, -half), term));
}

/** 1 - j sqrt(pi) root exp(-root^2) erfc(j root). */
export function attenuationOf(root: Complex): Complex {
  const w = complexErrorW(scale(root, -1));
  const product = multiply(root, w);
  const rootPi = Math.sqrt(Math.PI);
  return complex(1 + rootPi * product.im, -rootPi * product.re);
}

/**
 * The same by Sommerfeld's integral, all but the wave through the ground: over the path of steepest descent through the mirror
 * angle, where the integrand falls as exp(-kr s^2), by equal steps. Distances over the ground and heights (the sum of both ends)
 * times the wave number; needs a distance of 1.5 or more. Derived for this project.
 */
export function sommerfeldReflection(eps: Complex, kRho: number, kHeight: number): { readonly v: Complex; readonly h: Complex } {
  const kr = Math.hypot(kRho, kHeight);
  const [sin, cos] = [kHeight / kr, kRho / kr];
  // the surface-wave pole lies about (psi + |Delta|)/sqrt 2 from the path
  const poleAt = (Math.atan2(kHeight, kRho) + 1 / Math.sqrt(Math.hypot(eps.re, eps.im))) * Math.SQRT1_2;
  const step = Math.min(0.35 / Math.sqrt(kr), 0.8 * poleAt);
  const last = Math.ceil(Math.sqrt(22 / kr) / step);
  let [vRe, vIm, hRe, hIm] = [0, 0, 0, 0];
  const hankel: ScaledHankel = { h0Re: 0, h0Im: 0, h1Re: 0, h1Im: 0 };
  for (let i = -last; i <= last; i++) {
    const s = i * step;
    const [rootRe, rootIm] = rootOf(s * s, 2);
    // cosine and sine of the angle from the mirror angle: 1 - j s^2, -s sqrt(s^2 + 2j)
    const [aRe, aIm] = [-s * rootRe, -s * rootIm];
    const lambda = complex(cos + sin * aRe, -cos * s * s + sin * aIm);
    const u0 = complex(sin * s * s + cos * aIm, sin - cos * aRe);
    const square = multiply(lambda, lambda);
    const [u1Re, u1Im] = rootOf(eps.re - square.re, eps.im - square.im);
    scaledHankel(lambda.re * kRho, lambda.im * kRho, hankel);
    const part = spectrum(eps, u0, complex(-u1Im, u1Re), square, hankel, scale(lambda, kRho));
    // lambda exp(-kr s^2) kr ds / sqrt(s^2 + 2j); |root|^2 = sqrt(s^4 + 4)
    const size = (Math.exp(-kr * s * s) * kr * step) / Math.hypot(s * s, 2);
    const weight = complex(size * (lambda.re * rootRe + lambda.im * rootIm), size * (lambda.im * rootRe - lambda.re * rootIm));
    vRe += part.v.re * weight.re - part.v.im * weight.im;
    vIm += part.v.re * weight.im + part.v.im * weight.re;
    hRe += part.h.re * weight.re - part.h.im * weight.im;
    hIm += part.h.re * weight.im + part.h.im * weight.re;
  }
  return { v: complex(vRe, vIm), h: complex(hRe, hIm) };
}

/** One spectral part: R_v lambda^2 H0 upright; R_h (H0 - H1/x) + R_v u0^2 H1/x level. */
function spectrum(eps: Complex, u0: Complex, u1: Complex, square: Complex, hankel: ScaledHankel, x: Complex): { v: Complex; h: Complex } {
  const epsU0 = multiply(eps, u0);
  const rv = divide(subtract(epsU0, u1), add(epsU0, u1));
  const rh = divide(subtract(u0, u1), add(u0, u1));
  const h0 = complex(hankel.h0Re, hankel.h0Im);
  const slope = divide(complex(hankel.h1Re, hankel.h1Im), x);
  return {
    v: multiply(multiply(rv, square), h0),
    h: add(multiply(rh, subtract(h0, slope)), multiply(multiply(rv, multiply(u0, u0)), slope)),
  };
}
