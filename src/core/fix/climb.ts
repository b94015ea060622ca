import { type Slope, shortfallAt, slopeAt } from './likelihood';
import type { FramePoint, SightFrame } from './sightFrame';

/** Where a climb of the likelihood ended: on a true peak, on a station, or running off to infinity. */
export type Climb = { readonly end: 'peak' | 'station' | 'far'; readonly point: FramePoint; readonly shortfall: number };

/** Frame units from the middle beyond which a climb is taken to run off: ten thousand times the spread of the stations. */
const FAR = 1e4;
/** Frame units from a station within which a climb is taken to end on it. */
const ON_STATION = 1e-7;
/** A step smaller than this share of the distance to the nearest station changes nothing that prints. */
const SETTLED = 1e-13;

/**
 * Damped Newton climb from `start` to a maximum of the likelihood (a minimum of the shortfall). Every step must lower the
 * shortfall and the curvature is made positive before it is used, so the climb can't end on a minimum or a saddle.
 */
export function climb(frame: SightFrame, weights: ArrayLike<number>, start: FramePoint): Climb {
  let point = start;
  let shortfall = shortfallAt(frame, weights, point);
  let damping = 0;
  for (let round = 0; round < 300; round++) {
    const near = nearestStation(frame, weights, point);
    if (near < ON_STATION) return { end: 'station', point, shortfall };
    if (Math.hypot(point.x, point.y) > FAR) return { end: 'far', point, shortfall };
    const slope = slopeAt(frame, weights, point);
    const step = dampedStep(slope, damping, 1 + Math.hypot(point.x, point.y));
    const trial = { x: point.x + step.x, y: point.y + step.y };
    const there = shortfallAt(frame, weights, trial);
    if (there < shortfall) {
      point = trial;
      shortfall = there;
      damping = damping < 1e-6 ? 0 : damping / 8;
    } else {
      if (damping > 1e12) break;
      damping = Math.max(damping * 8, 1e-3);
    }
    if (Math.hypot(step.x, step.y) < SETTLED * near) break;
  }
  return { end: 'peak', point, shortfall };
}

/** Newton step of the damped curvature, no longer than `longest`. */
function dampedStep(slope: Slope, damping: number, longest: number): FramePoint {
  // The smaller eigenvalue is lifted to a thousandth of the scale at least, which turns a saddle into a way down.
  const middle = (slope.hxx + slope.hyy) / 2;
  const reach = Math.hypot((slope.hxx - slope.hyy) / 2, slope.hxy);
  const floor = 1e-9 * slope.scale;
  const lift = damping * slope.scale + (middle - reach < floor ? 1e-3 * slope.scale - (middle - reach) : 0);
  const hxx = slope.hxx + lift;
  const hyy = slope.hyy + lift;
  const det = hxx * hyy - slope.hxy * slope.hxy;
  const x = -(hyy * slope.gx - slope.hxy * slope.gy) / det;
  const y = -(hxx * slope.gy - slope.hxy * slope.gx) / det;
  const length = Math.hypot(x, y);
  const shrink = length > longest ? longest / length : 1;
  return { x: x * shrink, y: y * shrink };
}

/** Distance to the nearest station whose bearing counts, frame units. */
function nearestStation(frame: SightFrame, weights: ArrayLike<number>, point: FramePoint): number {
  let nearest = Infinity;
  for (let i = 0; i < frame.x.length; i++) {
    if (weights[i]! > 0) nearest = Math.min(nearest, Math.hypot(point.x - frame.x[i]!, point.y - frame.y[i]!));
  }
  return nearest;
}
