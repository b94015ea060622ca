import type { FramePoint, SightFrame } from './sightFrame';

/**
 * The likelihood of a place under von Mises bearing errors is exp(kappa sum w cos r), r the turn between the bearing taken and
 * the bearing to the place (Lenth 1981, Technometrics 23:149-154). Whatever kappa is, the best place is where the *shortfall*
 * sum w (1 - cos r) is least, so this file works with the shortfall: it keeps its digits where all bearings nearly meet.
 */

/** Sum of w (1 - cos r) at a point, 0 where every line passes through it; a station's own term is 0 on its own place. */
export function shortfallAt(frame: SightFrame, weights: ArrayLike<number>, point: FramePoint): number {
  let sum = 0;
  for (let i = 0; i < frame.x.length; i++) sum += weights[i]! * lineShortfall(frame, i, point);
  return sum;
}

/** 1 - cos r of one line at a point, in [0, 2]. */
export function lineShortfall(frame: SightFrame, line: number, point: FramePoint): number {
  const dx = point.x - frame.x[line]!;
  const dy = point.y - frame.y[line]!;
  const distance = Math.hypot(dx, dy);
  if (distance === 0) return 0;
  const cosTurn = (dx * frame.sine[line]! + dy * frame.cosine[line]!) / distance;
  if (cosTurn <= 0) return 1 - cosTurn;
  const sinTurn = (dx * frame.cosine[line]! - dy * frame.sine[line]!) / distance;
  return (sinTurn * sinTurn) / (1 + cosTurn); // 1 - cos without the cancellation
}

/** The shortfall infinitely far away in the best direction: total weight less the length of the summed bearings. */
export function shortfallFarAway(frame: SightFrame, weights: ArrayLike<number>): number {
  let east = 0;
  let north = 0;
  let total = 0;
  for (let i = 0; i < frame.x.length; i++) {
    east += weights[i]! * frame.sine[i]!;
    north += weights[i]! * frame.cosine[i]!;
    total += weights[i]!;
  }
  return total - Math.hypot(east, north);
}

/** Closer than this, in frame units, two stations count as one place. */
const SAME_PLACE = 1e-9;

/**
 * The least shortfall on arriving at a station: the direction of arrival is free there, so the station's own bearing (the best mean
 * of several taken there) costs nothing or little. This is why a likelihood can be highest on a station without meaning anything.
 */
export function shortfallOnStation(frame: SightFrame, weights: ArrayLike<number>, station: number): number {
  const point = { x: frame.x[station]!, y: frame.y[station]! };
  let east = 0;
  let north = 0;
  let here = 0;
  let others = 0;
  for (let i = 0; i < frame.x.length; i++) {
    if (Math.hypot(frame.x[i]! - point.x, frame.y[i]! - point.y) > SAME_PLACE) {
      others += weights[i]! * lineShortfall(frame, i, point);
      continue;
    }
    east += weights[i]! * frame.sine[i]!;
    north += weights[i]! * frame.cosine[i]!;
    here += weights[i]!;
  }
  return others + here - Math.hypot(east, north);
}

/** Slope and curvature of the shortfall: gradient, Hessian, and the trace of its always positive part sum w / d^2. */
export type Slope = {
  readonly gx: number;
  readonly gy: number;
  readonly hxx: number;
  readonly hxy: number;
  readonly hyy: number;
  readonly scale: number;
};

/** First and second derivatives of the shortfall at a point that is on no station. */
export function slopeAt(frame: SightFrame, weights: ArrayLike<number>, point: FramePoint): Slope {
  let gx = 0;
  let gy = 0;
  let hxx = 0;
  let hxy = 0;
  let hyy = 0;
  let scale = 0;
  for (let i = 0; i < frame.x.length; i++) {
    const dx = point.x - frame.x[i]!;
    const dy = point.y - frame.y[i]!;
    const d2 = dx * dx + dy * dy;
    const d = Math.sqrt(d2);
    const w = weights[i]! / d2;
    const cosTurn = (dx * frame.sine[i]! + dy * frame.cosine[i]!) / d;
    const sinTurn = (dx * frame.cosine[i]! - dy * frame.sine[i]!) / d; // sin of (bearing to the point - bearing taken)
    gx += w * sinTurn * dy;
    gy -= w * sinTurn * dx;
    const c = (w * cosTurn) / d2;
    const s = (w * sinTurn) / d2;
    hxx += c * dy * dy - 2 * s * dx * dy;
    hyy += c * dx * dx + 2 * s * dx * dy;
    hxy += s * (dx * dx - dy * dy) - c * dx * dy;
    scale += w;
  }
  return { gx, gy, hxx, hxy, hyy, scale };
}
