import { add, type Complex, complex, divide, magnitude, multiply, scale, squareRoot, subtract } from '../units/complex';
import { besselLogSlopes, besselOrders } from './cylinderFunctions';
import { LIGHT_MHZ_M } from './wireSolver';

/** An endless upright cylinder of one lossy material. */
export type Cylinder = { readonly radiusM: number; readonly relativePermittivity: number; readonly conductivitySPerM: number };

/** Size of the field beside the cylinder over the field without it. */
export type FieldRatio = { readonly vertical: number; readonly horizontal: number };

/**
 * Field at a point `atM` from the axis when a level plane wave comes from `fromDeg` off the direction in which the point lies: 0 is a
 * wave that meets the point first, 180 one that meets the cylinder first. `horizontal` is the part along the wave's own horizontal
 * field. The exact series of cylinder waves (Harrington, "Time-harmonic electromagnetic fields", 1961, section 5-9, from memory).
 * @returns one ratio for each of `fromDeg`
 */
export function besideCylinder(cylinder: Cylinder, frequencyMHz: number, atM: number, fromDeg: readonly number[]): readonly FieldRatio[] {
  const k = (2 * Math.PI * frequencyMHz) / LIGHT_MHZ_M;
  const order = Math.ceil(k * atM + 10);
  const electric = scattered(cylinder, k, frequencyMHz, order, 'electric');
  const magnetic = scattered(cylinder, k, frequencyMHz, order, 'magnetic');
  const { j, y } = besselOrders(order, k * atM);
  const slope = (f: Float64Array, n: number) => (n === 0 ? -f[1]! : (f[n - 1]! - f[n + 1]!) / 2);
  return fromDeg.map((deg) => {
    const angle = (deg * Math.PI) / 180; // the wave travels towards 180 degrees from where it comes: cos(n (angle + pi)) below
    let ez = complex(0);
    let hzAlong = complex(0); // d Hz / d(k r)
    let hzAcross = complex(0); // d Hz / d(angle) / (k r)
    for (let n = 0; n <= order; n++) {
      const twice = n === 0 ? 1 : 2;
      const away = n * (angle + Math.PI);
      const start = powerOfMinusJ(n);
      const outward = complex(j[n]!, -y[n]!);
      const e = multiply(start, add(complex(j[n]!), multiply(electric[n]!, outward)));
      const h = multiply(start, add(complex(j[n]!), multiply(magnetic[n]!, outward)));
      const outwardSlope = complex(slope(j, n), -slope(y, n));
      const hSlope = multiply(start, add(complex(slope(j, n)), multiply(magnetic[n]!, outwardSlope)));
      ez = add(ez, scale(e, twice * Math.cos(away)));
      hzAlong = add(hzAlong, scale(hSlope, twice * Math.cos(away)));
      hzAcross = add(hzAcross, scale(h, (-twice * n * Math.sin(away)) / (k * atM)));
    }
    // E = curl H / (j omega eps); its part along the incident field is the slope of Hz along the wave's travel, over -j.
    const alongTravel = subtract(scale(hzAlong, Math.cos(angle + Math.PI)), scale(hzAcross, Math.sin(angle + Math.PI)));
    return { vertical: magnitude(ez), horizontal: magnitude(alongTravel) };
  });
}

/** Weight of each outgoing cylinder wave; n and -n are alike. */
function scattered(cylinder: Cylinder, k: number, frequencyMHz: number, order: number, which: 'electric' | 'magnetic'): readonly Complex[] {
  const index = refractiveIndex(cylinder, frequencyMHz);
  const { j, y } = besselOrders(order, k * cylinder.radiusM);
  const inside = besselLogSlopes(order, scale(index, k * cylinder.radiusM));
  return Array.from({ length: order + 1 }, (_, n) => {
    const admittance = which === 'electric' ? multiply(index, inside[n]!) : divide(inside[n]!, index);
    const outward = complex(j[n]!, -y[n]!);
    const jSlope = n === 0 ? -j[1]! : (j[n - 1]! - j[n + 1]!) / 2;
    const ySlope = n === 0 ? -y[1]! : (y[n - 1]! - y[n + 1]!) / 2;
    const top = subtract(scale(admittance, j[n]!), complex(jSlope));
    return divide(top, subtract(complex(jSlope, -ySlope), multiply(admittance, outward)));
  });
}

/** sqrt(eps - j sigma / (omega eps0)). */
function refractiveIndex({ relativePermittivity, conductivitySPerM }: Cylinder, frequencyMHz: number): Complex {
  const loss = conductivitySPerM / (2 * Math.PI * frequencyMHz * 1e6 * 8.8541878128e-12);
  return squareRoot(complex(relativePermittivity, -loss));
}

const powerOfMinusJ = (n: number): Complex => [complex(1), complex(0, -1), complex(-1), complex(0, 1)][n % 4]!;
