import { turnDeg } from '../units/angles';
import { bearingDeg, distanceM, type MapPoint } from '../units/frames';
import { type DriveNet, driveNet, metresTo, nearestOnNet } from '../world/drivable';
import type { Track, World } from '../world/world';
import { type RunState, TICK_S } from './state';

/** Metres a second on each kind of way (our choice: a farm vehicle that takes care). */
const DRIVEN_M_PER_S: Readonly<Record<Track['kind'], number>> = { road: 9, track: 5, path: 3 };
/** A vehicle that stands beside its way gets onto it from so far off. */
export const BESIDE_WAY_M = 30;
/** It steers for a point of its way so near ahead; nearer ones say nothing of the direction. */
const AHEAD_M = 16;
const LEAST_AHEAD_M = 3;
/** By a course it takes the way that leads least aside, up to this. */
const ASIDE_DEG = 70;
const ARRIVED_M = 0.5;

/** The last goal on a world, and how far every point of its ways is from there: asked for at each tick of a drive. */
const lastGoal = new WeakMap<World, { readonly goal: number; readonly metres: Float64Array }>();

function metresToGoal(world: World, net: DriveNet, until: MapPoint): { readonly goal: number; readonly metres: Float64Array } {
  const goal = nearestOnNet(net, until);
  const known = lastGoal.get(world);
  if (known?.goal === goal) return known;
  const found = { goal, metres: metresTo(net, goal) };
  lastGoal.set(world, found);
  return found;
}

/** One tick aboard: along roads and tracks toward the place that was asked for, or by the course. Where no way leads on, it stops. */
export function driven(world: World, state: RunState): RunState {
  const net = driveNet(world);
  const { legs, at } = state;
  const stopped = { ...legs, paceMPerS: 0, until: null };
  const toGoal = legs.until && net.places.length > 0 ? metresToGoal(world, net, legs.until) : null;
  if (toGoal && distanceM(at, net.places[toGoal.goal]!) < ARRIVED_M) return { ...state, blocked: false, legs: stopped };
  const steered = toGoal ? towardGoal(net, at, toGoal.metres) : alongCourse(net, at, legs.courseDeg);
  if (steered === null) return { ...state, blocked: true, legs: stopped };
  const to = net.places[steered]!;
  const leftM = distanceM(at, to);
  const lengthM = Math.min(leftM, DRIVEN_M_PER_S[net.kinds[steered]!] * TICK_S);
  const share = leftM === 0 ? 1 : lengthM / leftM;
  const next = { eM: millimetre(at.eM + (to.eM - at.eM) * share), nM: millimetre(at.nM + (to.nM - at.nM) * share) };
  return {
    ...state,
    at: next,
    vehicle: { at: next, aboard: true },
    blocked: false,
    walkedM: millimetre(state.walkedM + lengthM),
    drivenM: millimetre(state.drivenM + lengthM),
    legs: toGoal ? { ...legs, courseDeg: bearingDeg(at, to) } : legs,
  };
}

const millimetre = (m: number): number => Math.round(m * 1000) / 1000;

function around(net: DriveNet, at: MapPoint): readonly number[] {
  const close = net.near(at, AHEAD_M);
  return close.length > 0 ? close : net.near(at, BESIDE_WAY_M);
}

/** The point near ahead from which the rest of the way is shortest; `null` where none leads there. */
function towardGoal(net: DriveNet, at: MapPoint, metres: Float64Array): number | null {
  let best: number | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const i of around(net, at)) {
    const m = distanceM(at, net.places[i]!);
    // Standing on a point says nothing: the next one leads on.
    const all = m + metres[i]! + (m < ARRIVED_M && metres[i]! > 0 ? AHEAD_M : 0);
    if (all < least) [best, least] = [i, all];
  }
  return best;
}

function alongCourse(net: DriveNet, at: MapPoint, courseDeg: number): number | null {
  let best: number | null = null;
  let least = ASIDE_DEG;
  for (const i of around(net, at)) {
    const place = net.places[i]!;
    if (distanceM(at, place) < LEAST_AHEAD_M) continue;
    const asideDeg = Math.abs(turnDeg(courseDeg, bearingDeg(at, place)));
    if (asideDeg <= least) [best, least] = [i, asideDeg];
  }
  return best;
}
