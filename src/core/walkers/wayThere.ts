import { toRad } from '../units/angles';
import { bearingDeg, distanceM, type MapPoint, stepAlong } from '../units/frames';
import { quickestWalk } from '../world/reachable';
import { paceFactor, walkable } from '../world/walking';
import type { World } from '../world/world';

const LOOK_EVERY_M = 6;
/** The straight way is taken unless it is this much slower than the quickest way on the map. */
const WORTH_GOING_ROUND = 1.25;
/** A way round is not worth more than this many times the straight line at full pace. */
const MOST_TIMES = 6;

/** Can one go straight from here to there without water or walls in the way? */
export const straightWayOpen = (map: World, from: MapPoint, to: MapPoint): boolean => straightShare(map, from, to) !== null;

/** Time of the straight way against level open ground, `null` where it is shut. */
export function straightShare(map: World, from: MapPoint, to: MapPoint): number | null {
  const lengthM = distanceM(from, to);
  const alongDeg = bearingDeg(from, to);
  const toward = { east: Math.sin(toRad(alongDeg)), north: Math.cos(toRad(alongDeg)) };
  let [slowness, looks] = [0, 0];
  for (let m = LOOK_EVERY_M; m < lengthM + LOOK_EVERY_M; m += LOOK_EVERY_M) {
    const at = m < lengthM ? stepAlong(from, alongDeg, m) : to;
    if (!walkable(map, at)) return null;
    slowness += 1 / Math.max(0.05, paceFactor(map, at, toward));
    looks++;
  }
  return looks === 0 ? 1 : slowness / looks;
}

/** The way there as the map shows it: straight where that serves, else by corners round water, walls and steep ground. */
export function wayThere(map: World, from: MapPoint, to: MapPoint, paceMPerS: number): readonly MapPoint[] | null {
  const straight = straightShare(map, from, to);
  const lengthM = distanceM(from, to);
  if (lengthM < 40 && straight !== null) return [to];
  const round = quickestWalk(map, from, to, paceMPerS);
  if (!round) return straight === null ? null : [to];
  if (straight !== null && (straight * lengthM) / paceMPerS <= WORTH_GOING_ROUND * round.seconds) return [to];
  if (round.seconds > (MOST_TIMES * Math.max(60, lengthM)) / paceMPerS) return null;
  return cornersOnly(map, round.points);
}

/** Leaves out the points between which the straight way is open. */
function cornersOnly(map: World, points: readonly MapPoint[]): readonly MapPoint[] {
  const kept: MapPoint[] = [];
  let at = 0;
  while (at < points.length - 1) {
    let next = at + 1;
    for (let i = Math.min(points.length - 1, at + 8); i > at + 1; i--) {
      if (!straightWayOpen(map, points[at]!, points[i]!)) continue;
      next = i;
      break;
    }
    kept.push(points[next]!);
    at = next;
  }
  return kept;
}
