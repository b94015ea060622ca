import { turnDeg } from '../units/angles';
import { bearingDeg, distanceM, type MapPoint } from '../units/frames';

/** One bearing, taken from one place: a line that starts there and runs one way only. */
export type BearingLine = { readonly at: MapPoint; readonly bearingDeg: number };

/** How the bearing stands off a point: degrees, the bearing taken minus the bearing to the point, clockwise positive, in (-180, 180]. */
export const missDeg = (line: BearingLine, point: MapPoint): number => turnDeg(bearingDeg(line.at, point), line.bearingDeg);

/** Where two bearing lines stand to each other. `parallel`: within 1e-9 of the same or the opposite direction, or taken from one place. */
export type Meeting =
  | { readonly kind: 'ahead'; readonly point: MapPoint }
  /** The lines, drawn on backwards, meet behind one station or both: walking along the bearings leads apart. */
  | { readonly kind: 'behind' }
  | { readonly kind: 'parallel' };

/** Below this sine of the angle between them two lines count as parallel. */
const PARALLEL_SINE = 1e-9;

/** The meeting of two bearing lines. A line that starts on the other one meets it ahead, at its own station. */
export function meetingOf(a: BearingLine, b: BearingLine): Meeting {
  const [aE, aN] = directionOf(a);
  const [bE, bN] = directionOf(b);
  const sine = aE * bN - aN * bE;
  const eastM = b.at.eM - a.at.eM;
  const northM = b.at.nM - a.at.nM;
  if (Math.abs(sine) < PARALLEL_SINE || (eastM === 0 && northM === 0)) return { kind: 'parallel' };
  const alongA = (eastM * bN - northM * bE) / sine;
  const alongB = (eastM * aN - northM * aE) / sine;
  const rounding = -1e-9 * distanceM(a.at, b.at);
  if (alongA < rounding || alongB < rounding) return { kind: 'behind' };
  return { kind: 'ahead', point: { eM: a.at.eM + alongA * aE, nM: a.at.nM + alongA * aN } };
}

/** East and north part of the unit vector along a bearing line. */
export function directionOf(line: BearingLine): readonly [number, number] {
  const rad = (line.bearingDeg * Math.PI) / 180;
  return [Math.sin(rad), Math.cos(rad)];
}
