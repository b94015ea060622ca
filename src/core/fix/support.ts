import { turnDeg, wrapBearingDeg } from '../units/angles';
import { bearingDeg, distanceM, type MapPoint } from '../units/frames';
import { AGREE_WITHIN_DEG, mostAgreeing } from './agreement';
import { type BearingLine, missDeg } from './bearingLine';
import { REFUSED_UNDER_DEG, widestCrossingDeg } from './crossing';
import { bestFar, type SupportedPlace, supportedPlace } from './supportedPlace';

/** A reading contradicts others if it misses their best point by more than this. */
export const CONTRADICTS_BEYOND_DEG = 30;
/** The readings that count: the last five. */
export const READINGS_COUNTED = 5;
/** Spread at which Andrews' loss stops growing (1.5 pi spreads) just where a reading starts to contradict: 6.4 degrees. */
export const SUPPORT_SD_DEG = CONTRADICTS_BEYOND_DEG / (1.5 * Math.PI);
/** Closer than this there is no telling the direction of a point. */
const HERE_M = 1;

/** A direction to walk, how many readings agree at most, and the point it leads to where the readings meet in one. */
export type SupportedDirection = { readonly bearingDeg: number; readonly agreeing: number; readonly point: MapPoint | null };

/**
 * The best-supported direction from a place: toward the maximum of the robust likelihood of the last five readings, or along the
 * last bearing if fewer than two of them agree. Null without readings. `readings` are in the order they were taken.
 */
export function bestSupportedDirection(readings: readonly BearingLine[], from: MapPoint): SupportedDirection | null {
  const counted = readings.slice(-READINGS_COUNTED);
  const last = counted.at(-1);
  if (!last) return null;
  const agreeing = mostAgreeing(counted);
  const alongLast = wrapBearingDeg(last.bearingDeg);
  if (agreeing < 2) return { bearingDeg: alongLast, agreeing, point: null };
  const best = bestWord(counted);
  if (best.kind === 'far') return { bearingDeg: best.bearingDeg, agreeing, point: null };
  // On the point itself its direction means nothing; the last bearing is the freshest word.
  const toward = distanceM(from, best.point) < HERE_M ? alongLast : bearingDeg(from, best.point);
  return { bearingDeg: toward, agreeing, point: best.point };
}

/**
 * Whether a reading misses the others' best point by more than 30 degrees. One other alone has no best point but a whole line of them:
 * then the reading contradicts it if it misses every point of that line by more. Without others nothing is contradicted.
 */
export function contradicts(reading: BearingLine, others: readonly BearingLine[]): boolean {
  const only = others[0];
  if (!only) return false;
  if (others.length === 1) return leastMissDeg(reading, only) > CONTRADICTS_BEYOND_DEG;
  const best = bestWord(others);
  if (best.kind === 'far') return Math.abs(turnDeg(best.bearingDeg, reading.bearingDeg)) > CONTRADICTS_BEYOND_DEG;
  if (distanceM(reading.at, best.point) < HERE_M) return false;
  return Math.abs(missDeg(reading, best.point)) > CONTRADICTS_BEYOND_DEG;
}

/**
 * The maximum of the robust likelihood, as far as it means anything. Readings in line with the walk cross nowhere, and their likelihood
 * is highest on the last station, where its own bearing fits for free: taken at its word it would send the walker back there. So a
 * place whose supporters cross under 20 degrees, where a fix is refused too, gives its direction only. Not so where two of them point
 * at one another: they cross as badly, but the place lies between them, and one who has gone past it is not to be sent on.
 */
function bestWord(readings: readonly BearingLine[]): SupportedPlace {
  const best = supportedPlace(readings, SUPPORT_SD_DEG);
  if (best.kind === 'far') return best;
  const supporters = readings.filter((line) => Math.abs(missDeg(line, best.point)) <= AGREE_WITHIN_DEG);
  const crossingDeg = widestCrossingDeg(
    supporters.map((line) => line.at),
    best.point,
  );
  if (crossingDeg >= REFUSED_UNDER_DEG || faceOneAnother(supporters)) return best;
  const heard = supporters.length > 0 ? supporters : readings;
  const { bearingDeg: alongDeg, loss } = bestFar(heard, SUPPORT_SD_DEG);
  return { kind: 'far', bearingDeg: alongDeg, logLikelihood: -loss };
}

const faceOneAnother = (lines: readonly BearingLine[]): boolean =>
  lines.some((a, i) => lines.slice(0, i).some((b) => Math.abs(turnDeg(a.bearingDeg, b.bearingDeg)) > 90));

/** How far off the reading is from the point of the other line that suits it best, degrees. */
function leastMissDeg(reading: BearingLine, other: BearingLine): number {
  const farEnd = turnDeg(reading.bearingDeg, other.bearingDeg);
  if (distanceM(reading.at, other.at) < HERE_M) return Math.abs(farEnd);
  // Seen from the reading, the line runs from its station to its far end and turns by less than 180 degrees on the way.
  const nearEnd = turnDeg(reading.bearingDeg, bearingDeg(reading.at, other.at));
  const swept = turnDeg(nearEnd, farEnd);
  const passes = swept >= 0 ? nearEnd <= 0 && nearEnd + swept >= 0 : nearEnd >= 0 && nearEnd + swept <= 0;
  return passes ? 0 : Math.min(Math.abs(nearEnd), Math.abs(farEnd));
}

export { agree } from './agreement';
