import { EARTH_RADIUS_M, wavelengthM } from './wavelength';

/** Where the march of the terrain field begins, metres from the transmitter. */
export const START_M = 25;

/** Ground of a march with the bend of the Earth taken off, and a point put in where the march begins. */
export type FlatGround = {
  readonly xM: Float64Array;
  readonly zM: Float64Array;
  /** Index at which the march begins. */
  readonly begin: number;
  /** For each point its index in the request, -1 for the one put in; for each facet the request's facet it lies on. */
  readonly point: Int32Array;
  readonly facet: Int32Array;
};

/** Heights h - x^2 / (2a), with a point at START_M unless one stands there; a shorter path begins at its end. */
export function flattenedGround(request: {
  readonly distancesM: ArrayLike<number>;
  readonly heightsM: ArrayLike<number>;
  readonly earthRadiusM?: number;
}): FlatGround {
  const { distancesM, heightsM, earthRadiusM = EARTH_RADIUS_M } = request;
  const n = distancesM.length;
  let after = 1;
  while (after < n - 1 && distancesM[after]! < START_M - 1e-6) after++;
  const put = distancesM[after]! > START_M + 1e-6 ? 1 : 0;
  const [xM, zM] = [new Float64Array(n + put), new Float64Array(n + put)];
  const [point, facet] = [new Int32Array(n + put), new Int32Array(n + put)];
  for (let i = 0; i < n + put; i++) {
    const from = i < after || !put ? i : i - 1;
    const here = put === 1 && i === after;
    point[i] = here ? -1 : from;
    facet[i] = from;
    xM[i] = here ? START_M : distancesM[from]!;
    const share = here ? (START_M - distancesM[from]!) / (distancesM[from + 1]! - distancesM[from]!) : 0;
    const heightM = here ? heightsM[from]! + (heightsM[from + 1]! - heightsM[from]!) * share : heightsM[from]!;
    zM[i] = heightM - xM[i]! ** 2 / (2 * earthRadiusM);
  }
  return { xM, zM, begin: after, point, facet };
}

/** Radius of the first Fresnel zone in the middle of the path, metres. */
export const fresnelZoneM = ({ xM }: FlatGround, frequencyMHz: number): number =>
  Math.sqrt(wavelengthM(frequencyMHz) * xM[xM.length - 1]!) / 2;

/** Fresnel zone radii kept free above the tightest line: fewer, and deep shadows fill from the absorbing top. */
const CLEAR_ZONES = 2;

/** How high the field must be kept free above the ground: the deepest valley under the tightest line over the hills, and a margin. */
export function clearTopM(ground: FlatGround, txHeightM: number, leastM: number, frequencyMHz: number): number {
  return deepestM(ground, txHeightM) + Math.max(CLEAR_ZONES * fresnelZoneM(ground, frequencyMHz), 20, leastM);
}

/** Greatest height of the tightest line from the transmitter over all hills, above the ground under it. */
function deepestM({ xM, zM }: FlatGround, txHeightM: number): number {
  const high = (i: number) => (i === 0 ? zM[0]! + txHeightM : zM[i]!);
  const hull: number[] = [];
  for (let i = 0; i < zM.length; i++) {
    while (hull.length > 1) {
      const a = hull[hull.length - 2]!;
      const b = hull[hull.length - 1]!;
      if ((high(b) - high(a)) * (xM[i]! - xM[a]!) > (high(i) - high(a)) * (xM[b]! - xM[a]!)) break;
      hull.pop();
    }
    hull.push(i);
  }
  let deepest = 0;
  for (let h = 1; h < hull.length; h++) {
    const a = hull[h - 1]!;
    const b = hull[h]!;
    for (let i = a; i <= b; i++) {
      const line = high(a) + ((high(b) - high(a)) * (xM[i]! - xM[a]!)) / (xM[b]! - xM[a]!);
      deepest = Math.max(deepest, line - zM[i]!);
    }
  }
  return deepest;
}
