import { distanceM, type MapPoint } from '../units/frames';
import { valueAt } from '../world/grid';
import { COVER, type World } from '../world/world';
import { EARTH_RADIUS_M } from './wavelength';

/** Canopy height: the string is among trees below the first, over them above the second, metres (our choice). */
const CANOPY_FROM_M = 10;
const CANOPY_TO_M = 14;

/** One end of a line: a place on the map and a height above its ground. */
export type End = MapPoint & { readonly heightM: number };

/** The ground between two ends, and the tightest string from one to the other over it. */
export type SightString = {
  /** Distances from the first end and ground there with the bend of the Earth taken off, metres. */
  readonly xM: Float64Array;
  readonly zM: Float64Array;
  /** Slopes at which the string leaves the first end and the second, upward positive. */
  readonly slopeAtFirst: number;
  readonly slopeAtSecond: number;
  /** Length of the string among trees, metres. */
  readonly woodM: number;
  /** Nothing stands in the straight line. */
  readonly clear: boolean;
};

/**
 * Samples stand at fixed distances from the first end, the last at the second end whatever its distance, so that every number here
 * changes without steps as the second end moves.
 */
export function sightString(world: World, from: End, to: End): SightString {
  const d = Math.max(0.01, distanceM(from, to));
  const spacingM = Math.min(10, world.cellM);
  const n = Math.max(1, Math.ceil(d / spacingM - 1e-9)) + 1;
  const xM = new Float64Array(n);
  const zM = new Float64Array(n);
  const wood = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const x = i === n - 1 ? d : i * spacingM;
    const eM = from.eM + ((to.eM - from.eM) * x) / d;
    const nM = from.nM + ((to.nM - from.nM) * x) / d;
    xM[i] = x;
    zM[i] = valueAt(world.groundM, eM, nM) - (x * x) / (2 * EARTH_RADIUS_M);
    wood[i] = woodShareAt(world, eM, nM);
  }
  return { xM, zM, ...overGround(xM, zM, wood, from.heightM, to.heightM) };
}

function overGround(xM: Float64Array, zM: Float64Array, wood: Float64Array, h1M: number, h2M: number): Omit<SightString, 'xM' | 'zM'> {
  const n = xM.length;
  const firstM = zM[0]! + h1M;
  const secondM = zM[n - 1]! + h2M;
  const line = (secondM - firstM) / xM[n - 1]!;
  const high = (i: number) => (i === 0 ? firstM : i === n - 1 ? secondM : zM[i]!);
  const hull: number[] = [];
  for (let i = 0; i < n; i++) {
    while (hull.length > 1) {
      const [a, b] = [hull[hull.length - 2]!, hull[hull.length - 1]!];
      if ((high(b) - high(a)) * (xM[i]! - xM[a]!) > (high(i) - high(a)) * (xM[b]! - xM[a]!)) break;
      hull.pop();
    }
    hull.push(i);
  }
  const over = new Float64Array(n);
  for (let s = 1; s < hull.length; s++) {
    const [a, b] = [hull[s - 1]!, hull[s]!];
    const slope = (high(b) - high(a)) / (xM[b]! - xM[a]!);
    for (let i = a; i <= b; i++) over[i] = high(a) + slope * (xM[i]! - xM[a]!) - zM[i]!;
  }
  const [second, beforeLast] = [hull[1]!, hull[hull.length - 2]!];
  return {
    slopeAtFirst: Math.max(line, (high(second) - firstM) / xM[second]!),
    slopeAtSecond: Math.max(-line, (high(beforeLast) - secondM) / (xM[n - 1]! - xM[beforeLast]!)),
    woodM: lengthAmongTrees(xM, over, wood),
    clear: hull.length === 2,
  };
}

function lengthAmongTrees(xM: Float64Array, over: Float64Array, wood: Float64Array): number {
  const share = (i: number) => wood[i]! * Math.min(1, Math.max(0, (CANOPY_TO_M - over[i]!) / (CANOPY_TO_M - CANOPY_FROM_M)));
  let lengthM = 0;
  for (let i = 1; i < xM.length; i++) lengthM += ((xM[i]! - xM[i - 1]!) * (share(i) + share(i - 1))) / 2;
  return lengthM;
}

/** Share of woodland round a point, bilinear between cell centres, so that an edge is crossed over the width of a cell. */
export function woodShareAt(world: World, eM: number, nM: number): number {
  const { columns, rows, cellM, values } = world.cover;
  const x = Math.min(columns - 1, Math.max(0, eM / cellM - 0.5));
  const y = Math.min(rows - 1, Math.max(0, nM / cellM - 0.5));
  const x0 = Math.min(columns - 2, Math.floor(x));
  const y0 = Math.min(rows - 2, Math.floor(y));
  const is = (cell: number) => (values[cell] === COVER.wood ? 1 : 0);
  const at = y0 * columns + x0;
  const [fx, fy] = [x - x0, y - y0];
  const south = is(at) + (is(at + 1) - is(at)) * fx;
  const north = is(at + columns) + (is(at + columns + 1) - is(at + columns)) * fx;
  return south + (north - south) * fy;
}
