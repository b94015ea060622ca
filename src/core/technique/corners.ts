import type { RunState } from '../run/state';
import { turnDeg } from '../units/angles';
import { bearingDeg, distanceM, type MapPoint } from '../units/frames';

/** A place where the course changed: the way that led there and the way that led on. */
export type Corner = {
  readonly tick: number;
  readonly at: MapPoint;
  readonly beforeDeg: number;
  readonly afterDeg: number;
  /** Ticks safely before and after the corner, a few metres of way off: a reading made in the corner lies between them. */
  readonly beforeTick: number;
  readonly afterTick: number;
};

type PathPoint = { readonly tick: number; readonly at: MapPoint };

/** The path is looked at every metre walked. */
const STEP_M = 1;
/** A course is what 25 m of way make good: a step aside against a fade, or round a puddle, changes none. */
const COURSE_STEPS = 25;
const ASIDE_STEPS = 5;
/** Way that makes good less than this has no course: to and fro on the spot. */
const LEAST_MADE_GOOD_M = 10;

/** The course changes of a run of more than `leastDeg`, one for each corner. Gentle bends are none, however far they lead round. */
export function cornersOf(states: readonly RunState[], leastDeg: number): readonly Corner[] {
  const path = pathOf(states);
  const turns = path.map((_, i) => Math.abs(turnAt(path, i)));
  const corners: Corner[] = [];
  for (let i = COURSE_STEPS; i + COURSE_STEPS < path.length; i++) {
    if (turns[i]! <= leastDeg || !isSharpest(turns, i)) continue;
    corners.push({
      ...path[i]!,
      beforeDeg: bearingDeg(path[i - COURSE_STEPS]!.at, path[i]!.at),
      afterDeg: bearingDeg(path[i]!.at, path[i + COURSE_STEPS]!.at),
      beforeTick: path[i - ASIDE_STEPS]!.tick,
      afterTick: path[i + ASIDE_STEPS]!.tick,
    });
    i += COURSE_STEPS - 1;
  }
  return corners;
}

function pathOf(states: readonly RunState[]): readonly PathPoint[] {
  const path: PathPoint[] = [];
  let walkedM = 0;
  for (const [tick, { at }] of states.entries()) {
    walkedM += tick === 0 ? 0 : distanceM(states[tick - 1]!.at, at);
    if (tick > 0 && walkedM < STEP_M) continue;
    path.push({ tick, at });
    walkedM = 0;
  }
  return path;
}

function turnAt(path: readonly PathPoint[], i: number): number {
  const [from, here, to] = [path[i - COURSE_STEPS], path[i], path[i + COURSE_STEPS]];
  if (!from || !here || !to) return 0;
  if (Math.min(distanceM(from.at, here.at), distanceM(here.at, to.at)) < LEAST_MADE_GOOD_M) return 0;
  return turnDeg(bearingDeg(from.at, here.at), bearingDeg(here.at, to.at));
}

/** Is no turn within a course's length sharper, and none before it as sharp? */
function isSharpest(turns: readonly number[], i: number): boolean {
  for (let k = 1; k <= COURSE_STEPS; k++) {
    if ((turns[i - k] ?? 0) >= turns[i]! || (turns[i + k] ?? 0) > turns[i]!) return false;
  }
  return true;
}
