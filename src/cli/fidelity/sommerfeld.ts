import {
  add,
  type Complex,
  complex,
  divide,
  exponential,
  magnitude,
  multiply,
  scale,
  squareRoot,
  subtract,
} from '../../core/units/complex';

/**
 * The exact field of a short dipole over flat lossy ground by numerical integration of the Sommerfeld integrals: the judge of the
 * closed form. V: vertical dipole, vertical field. H: level dipole, level field broadside. Derived for this project from the
 * spectrum of plane waves with Fresnel's coefficients; exp(+jwt). Real axis, with the square root at the branch point taken out
 * by lambda = k sin t below k and k cosh t above.
 */
export function sommerfeldExcessDb(
  eps: Complex,
  polarization: 'v' | 'h',
  frequencyMHz: number,
  path: { distanceM: number; h1M: number; h2M: number },
): number {
  const k = (2 * Math.PI * frequencyMHz) / 299.792458;
  const { distanceM: rho, h1M, h2M } = path;
  const reflected = reflectedField(eps, polarization, k, rho, h1M + h2M);
  const direct = directField(polarization, k, rho, h1M - h2M);
  const free = 1 / Math.hypot(rho, h1M - h2M);
  return -20 * Math.log10(magnitude(add(direct, reflected)) / free);
}

/** Free-space dipole field over exp(-jkr)/r far away, near terms in: V the vertical part of a vertical dipole, H broadside. */
function directField(polarization: 'v' | 'h', k: number, rho: number, dz: number): Complex {
  const r = Math.hypot(rho, dz);
  const wave = scale(exponential(complex(0, -k * r)), 1 / r);
  const kr = k * r;
  const transverse = complex(1 - 1 / (kr * kr), -1 / kr);
  const radial = complex(2 / (kr * kr), 2 / kr); // minus 2 (1/(jkr) - 1/(kr)^2)
  const cos2 = polarization === 'v' ? (dz / r) ** 2 : 0;
  return multiply(wave, add(scale(transverse, 1 - cos2), scale(radial, -cos2)));
}

function reflectedField(eps: Complex, polarization: 'v' | 'h', k: number, rho: number, height: number): Complex {
  const below = integrate(0, Math.PI / 2, Math.ceil(400 + 8 * k * (rho + height)), (t) => {
    const cos = Math.cos(t);
    // u0 = j k cos t; lambda/u0 dlambda = lambda/(jk cos t) k cos t dt = lambda/j dt
    return term(eps, polarization, k, rho, height, k * Math.sin(t), complex(0, k * cos), complex(0, -k * Math.sin(t)));
  });
  const far = Math.acosh(1 + 36 / (k * height));
  const above = integrate(0, far, Math.ceil(400 + 10 * k * rho * Math.cosh(far)), (t) => {
    const lambda = k * Math.cosh(t);
    return term(eps, polarization, k, rho, height, lambda, complex(k * Math.sinh(t)), complex(lambda));
  });
  return add(below, above);
}

/** One spectral part: reflection, decay with height and the Bessel function of its kind; `weight` is lambda/u0 dlambda/dt. */
function term(
  eps: Complex,
  polarization: 'v' | 'h',
  k: number,
  rho: number,
  height: number,
  lambda: number,
  u0: Complex,
  weight: Complex,
): Complex {
  const u1 = squareRoot(subtract(complex(lambda * lambda), scale(eps, k * k)));
  const decay = exponential(scale(u0, -height));
  const rv = divide(subtract(multiply(eps, u0), u1), add(multiply(eps, u0), u1));
  const x = lambda * rho;
  if (polarization === 'v') {
    return scale(multiply(multiply(rv, decay), weight), ((lambda * lambda) / (k * k)) * bessel(0, x));
  }
  const rh = divide(subtract(u0, u1), add(u0, u1));
  const slope = x < 1e-6 ? 0.5 : bessel(1, x) / x;
  const kind = add(scale(rh, bessel(0, x) - slope), scale(multiply(rv, multiply(u0, u0)), slope / (k * k)));
  return multiply(multiply(kind, decay), weight);
}

/** Simpson's rule with `steps` (made even). */
function integrate(from: number, to: number, steps: number, f: (t: number) => Complex): Complex {
  const n = steps + (steps % 2);
  const h = (to - from) / n;
  let [re, im] = [0, 0];
  for (let i = 0; i <= n; i++) {
    const weight = i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2;
    const value = f(from + i * h);
    re += weight * value.re;
    im += weight * value.im;
  }
  return { re: (re * h) / 3, im: (im * h) / 3 };
}

/** J0 or J1: the mean over a turn for small arguments, Hankel's asymptotic series from 25 on; better than 1e-9. */
function bessel(order: 0 | 1, x: number): number {
  if (x > 25) return besselFar(order, x);
  const points = Math.ceil(x + 24);
  let sum = 0;
  for (let i = 0; i < points; i++) {
    const t = (Math.PI * (i + 0.5)) / points;
    sum += Math.cos(order * t - x * Math.sin(t));
  }
  return sum / points;
}

function besselFar(order: 0 | 1, x: number): number {
  const mu = 4 * order * order;
  let [p, q, part] = [0, 0, 1];
  for (let m = 0; m < 8; m++) {
    const sign = m % 4 < 2 ? 1 : -1;
    if (m % 2 === 0) p += sign * part;
    else q += sign * part;
    part *= (mu - (2 * m + 1) ** 2) / ((m + 1) * 8 * x);
  }
  const angle = x - (order / 2 + 0.25) * Math.PI;
  return Math.sqrt(2 / (Math.PI * x)) * (p * Math.cos(angle) - q * Math.sin(angle));
}
