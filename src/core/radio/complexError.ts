import type { Complex } from '../units/complex';

const TERMS = 40;
const SCALE = Math.sqrt(TERMS / Math.SQRT2);
const COEFFICIENTS = coefficients();

/** Fourier coefficients of (L^2 + t^2) exp(-t^2) in the angle of the mapped line. */
function coefficients(): Float64Array {
  const points = 4 * TERMS;
  const out = new Float64Array(TERMS + 1);
  for (let i = 1 - points / 2; i < points / 2; i++) {
    const angle = (2 * Math.PI * i) / points;
    const t = SCALE * Math.tan(angle / 2);
    const f = Math.exp(-t * t) * (SCALE * SCALE + t * t);
    for (let n = 1; n <= TERMS; n++) out[n]! += (f * Math.cos(n * angle)) / points;
  }
  return out;
}

/**
 * w(z) = exp(-z^2) erfc(-jz) for z in the upper half plane (z.im >= 0), about twelve digits.
 * @source J. A. C. Weideman, SIAM J. Numer. Anal. 31 (1994) 1497-1518, with 40 terms
 */
export function complexErrorW(z: Complex): Complex {
  // Z = (L + jz) / (L - jz)
  const ar = SCALE - z.im;
  const ai = z.re;
  const br = SCALE + z.im;
  const bi = -z.re;
  const d = br * br + bi * bi;
  const zr = (ar * br + ai * bi) / d;
  const zi = (ai * br - ar * bi) / d;
  let pr = COEFFICIENTS[TERMS]!;
  let pi = 0;
  for (let n = TERMS - 1; n >= 1; n--) {
    const next = pr * zr - pi * zi + COEFFICIENTS[n]!;
    pi = pr * zi + pi * zr;
    pr = next;
  }
  // w = 2 p / (L - jz)^2 + 1 / (sqrt(pi) (L - jz))
  const inverse = { re: br / d, im: -bi / d };
  const square = { re: inverse.re ** 2 - inverse.im ** 2, im: 2 * inverse.re * inverse.im };
  const root = 1 / Math.sqrt(Math.PI);
  return {
    re: 2 * (pr * square.re - pi * square.im) + root * inverse.re,
    im: 2 * (pr * square.im + pi * square.re) + root * inverse.im,
  };
}
