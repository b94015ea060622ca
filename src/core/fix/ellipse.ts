import { toDeg } from '../units/angles';
import { lineShortfall } from './likelihood';
import type { FramePoint, SightFrame } from './sightFrame';

/** An ellipse round a fix. `majorAxisBearingDeg` is the bearing of its long axis, in [0, 180). */
export type Ellipse = { readonly semiMajorM: number; readonly semiMinorM: number; readonly majorAxisBearingDeg: number };

/** A symmetric 2 x 2 matrix over east and north: information (1/m^2) or covariance (m^2). */
export type Symmetric = { readonly ee: number; readonly en: number; readonly nn: number };

/** The 95 % point of chi-square with two degrees of freedom, -2 ln 0.05 = 5.991. */
export const CHI_SQUARE_95 = -2 * Math.log(0.05);

/** The 95 % point of Fisher's F with 2 and `freedom` degrees; closed form of its distribution function for two upper degrees. */
export const fisherF95 = (freedom: number): number => (freedom / 2) * (0.05 ** (-2 / freedom) - 1);

/** What bearings of one radian error tell about a place, 1/m^2: sum of w u u' / d^2, u across the line of sight. */
export function unitInformation(frame: SightFrame, weights: ArrayLike<number>, point: FramePoint): Symmetric {
  let ee = 0;
  let en = 0;
  let nn = 0;
  for (let i = 0; i < frame.x.length; i++) {
    const dx = (point.x - frame.x[i]!) * frame.unitM;
    const dy = (point.y - frame.y[i]!) * frame.unitM;
    const w = weights[i]! / (dx * dx + dy * dy) ** 2;
    ee += w * dy * dy;
    en -= w * dx * dy;
    nn += w * dx * dx;
  }
  return { ee, en, nn };
}

/**
 * Lenth's matrix before it is inverted and divided by kappa, 1/m^2 (Lenth 1981, Technometrics 23:149-154): one factor of
 * each product takes the bearing as it was taken, the other the direction to the place.
 */
export function lenthInformation(frame: SightFrame, weights: ArrayLike<number>, point: FramePoint): Symmetric {
  let ee = 0;
  let en = 0;
  let nn = 0;
  for (let i = 0; i < frame.x.length; i++) {
    const dx = (point.x - frame.x[i]!) * frame.unitM;
    const dy = (point.y - frame.y[i]!) * frame.unitM;
    const w = weights[i]! / Math.hypot(dx, dy) ** 3;
    ee += w * dy * frame.cosine[i]!;
    en -= (w * (dy * frame.sine[i]! + dx * frame.cosine[i]!)) / 2;
    nn += w * dx * frame.sine[i]!;
  }
  return { ee, en, nn };
}

/** Squared turns between bearings and place, weighted sum, rad^2. */
export function squaredTurns(frame: SightFrame, weights: ArrayLike<number>, point: FramePoint): number {
  let sum = 0;
  for (let i = 0; i < frame.x.length; i++) {
    const turnRad = 2 * Math.asin(Math.min(1, Math.sqrt(lineShortfall(frame, i, point) / 2)));
    sum += weights[i]! * turnRad * turnRad;
  }
  return sum;
}

/** The ellipse d' information d = `level`; null unless the information is positive definite and the axes come out finite and not 0. */
export function ellipseOf(information: Symmetric, level: number): Ellipse | null {
  const { ee, en, nn } = information;
  const middle = (ee + nn) / 2;
  const reach = Math.hypot((ee - nn) / 2, en);
  const most = middle + reach;
  const least = (ee * nn - en * en) / most; // the product of the two is the determinant: no cancellation
  const semiMajorM = Math.sqrt(level / least);
  const semiMinorM = Math.sqrt(level / most);
  if (!(least > 0 && semiMinorM > 0 && Number.isFinite(semiMajorM))) return null;
  // The long axis lies along the eigenvector of the least information.
  const alongDeg = (toDeg(Math.atan2(2 * en, nn - ee)) / 2 + 270) % 180;
  return { semiMajorM, semiMinorM, majorAxisBearingDeg: alongDeg };
}
