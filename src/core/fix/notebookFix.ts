import type { Mark } from '../run/state';
import { turnDeg } from '../units/angles';
import { bearingDeg, distanceM, type MapPoint } from '../units/frames';
import type { Ellipse } from './ellipse';
import { estimateFix } from './estimate';
import type { Fix, FoundFix } from './fix';

/** From three bearings on, one stray among them must not drag the place: Huber's weights. */
const LEAST_FOR_WEIGHTS = 3;

/** The fix from the bearings of a notebook that stand. @param learnerSdDeg the learner's own spread, where a blind test has measured it */
export function notebookFix(marks: readonly Mark[], learnerSdDeg?: number): Fix {
  const standing = marks.filter(({ struckOut }) => !struckOut);
  return estimateFix({
    stations: standing.map(({ at }) => [at.eM, at.nM]),
    bearingsDeg: standing.map(({ bearingDeg: taken }) => taken),
    method: standing.length >= LEAST_FOR_WEIGHTS ? 'huber' : 'ml',
    ...(learnerSdDeg === undefined ? {} : { learnerSdDeg }),
  });
}

/** Does a place lie in an area round a fix? */
export function liesWithin({ x, y }: Pick<FoundFix, 'x' | 'y'>, area: Ellipse, place: MapPoint): boolean {
  const centre = { eM: x, nM: y };
  const offM = distanceM(centre, place);
  const fromAxis = (turnDeg(area.majorAxisBearingDeg, bearingDeg(centre, place)) * Math.PI) / 180;
  return Math.hypot((offM * Math.cos(fromAxis)) / area.semiMajorM, (offM * Math.sin(fromAxis)) / area.semiMinorM) <= 1;
}
