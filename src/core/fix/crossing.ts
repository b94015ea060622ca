import { turnDeg } from '../units/angles';
import { bearingDeg, distanceM, type MapPoint } from '../units/frames';

/** No fix below this crossing angle, and a warning below the next: at 20 degrees the area is four times as long as at 90, at 30 2.7 times. */
export const REFUSED_UNDER_DEG = 20;
export const WARNED_UNDER_DEG = 30;

/** The angle at which two lines cross, degrees in [0, 90]: lines that meet at 150 degrees cross as badly as at 30. */
export function crossingAngleDeg(aDeg: number, bDeg: number): number {
  const turned = Math.abs(turnDeg(aDeg, bDeg));
  return turned > 90 ? 180 - turned : turned;
}

/** The widest crossing at `point` between lines of sight from any two of the places, degrees in [0, 90]; 0 for fewer than two places. */
export function widestCrossingDeg(places: readonly MapPoint[], point: MapPoint): number {
  const sights = places.map((place) => bearingDeg(place, point));
  let widest = 0;
  for (const [i, a] of sights.entries()) {
    for (const b of sights.slice(0, i)) widest = Math.max(widest, crossingAngleDeg(a, b));
  }
  return widest;
}

/**
 * How well a next bearing from `next` would cross those already taken, were the tag at `point`: the widest crossing it would
 * make with any of them, degrees in [0, 90]. The best next place is the reachable one where this is largest.
 */
export function crossingFromDeg(next: MapPoint, taken: readonly MapPoint[], point: MapPoint): number {
  const sight = bearingDeg(next, point);
  return taken.reduce((widest, place) => Math.max(widest, crossingAngleDeg(sight, bearingDeg(place, point))), 0);
}

/** A place this close to a station, in metres or as a share of the spread of the stations, counts as on top of it. */
const ON_TOP_M = 1;
const ON_TOP_SHARE = 0.001;

/** The first of the places that `point` stands on top of, or -1. `spreadM` is the reach of the places from their middle. */
export function stationUnder(places: readonly MapPoint[], point: MapPoint, spreadM: number): number {
  const onTopM = Math.max(ON_TOP_M, ON_TOP_SHARE * spreadM);
  return places.findIndex((place) => distanceM(place, point) < onTopM);
}
