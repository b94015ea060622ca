import { turnDeg } from '../units/angles';
import { bearingDeg, distanceM, type MapPoint } from '../units/frames';
import { type BearingLine, meetingOf } from './bearingLine';

/** Readings agree if one point lies within this turn of each line. */
export const AGREE_WITHIN_DEG = 15;

/** What one place allows: all points whose bearing from it lies within `halfDeg` of `bearingDeg`. */
type Wedge = BearingLine & { readonly halfDeg: number };

const SAME_PLACE_M = 1e-6;
const ROUNDING_DEG = 1e-7;

/**
 * Whether one point lies within 15 degrees of each line. Exact: every line allows a wedge, and wedges that have a point in
 * common have one of their corners in common, a tip or a crossing of two sides.
 */
export function agree(readings: readonly BearingLine[]): boolean {
  const wedges = wedgesOf(readings);
  if (!wedges) return false;
  if (wedges.length < 2) return true;
  return corners(wedges).some((corner) => wedges.every((wedge) => inside(wedge, corner)));
}

/** The size of the largest set of readings that agree; 1 for a single reading. For a few readings: it tries every set. */
export function mostAgreeing(readings: readonly BearingLine[]): number {
  let most = 0;
  for (let set = 1; set < 2 ** readings.length; set++) {
    const chosen = readings.filter((_, i) => (set >> i) & 1);
    if (chosen.length > most && agree(chosen)) most = chosen.length;
  }
  return most;
}

/** One wedge a place: several readings from one place leave what all of them allow; undefined where that is nothing. */
function wedgesOf(readings: readonly BearingLine[]): readonly Wedge[] | undefined {
  const wedges: Wedge[] = [];
  for (const { at, bearingDeg: takenDeg } of readings) {
    const same = wedges.findIndex((wedge) => distanceM(wedge.at, at) < SAME_PLACE_M);
    const before = wedges[same];
    if (!before) {
      wedges.push({ at, bearingDeg: takenDeg, halfDeg: AGREE_WITHIN_DEG });
      continue;
    }
    const turned = turnDeg(before.bearingDeg, takenDeg);
    const leftDeg = Math.max(-before.halfDeg, turned - AGREE_WITHIN_DEG);
    const rightDeg = Math.min(before.halfDeg, turned + AGREE_WITHIN_DEG);
    if (rightDeg < leftDeg) return undefined;
    wedges[same] = { at, bearingDeg: before.bearingDeg + (leftDeg + rightDeg) / 2, halfDeg: (rightDeg - leftDeg) / 2 };
  }
  return wedges;
}

function corners(wedges: readonly Wedge[]): MapPoint[] {
  const sides = wedges.map(({ at, bearingDeg: alongDeg, halfDeg }) => [
    { at, bearingDeg: alongDeg - halfDeg },
    { at, bearingDeg: alongDeg + halfDeg },
  ]);
  const found = wedges.map(({ at }) => at);
  for (const [i, ours] of sides.entries()) {
    for (const a of ours) {
      for (const b of sides.slice(0, i).flat()) {
        const meeting = meetingOf(a, b);
        if (meeting.kind === 'ahead') found.push(meeting.point);
      }
    }
  }
  return found;
}

const inside = (wedge: Wedge, point: MapPoint): boolean =>
  distanceM(wedge.at, point) < SAME_PLACE_M ||
  Math.abs(turnDeg(wedge.bearingDeg, bearingDeg(wedge.at, point))) <= wedge.halfDeg + ROUNDING_DEG;
