import { concentrationOf } from './besselRatio';
import { climb } from './climb';
import { lineShortfall, shortfallAt } from './likelihood';
import { meetings } from './peakSearch';
import type { FramePoint, SightFrame } from './sightFrame';

/** The two ways of giving a stray bearing less say (Lenth 1981, Technometrics 23:149-154). */
export type RobustMethod = 'huber' | 'andrews';

/** Tuning constant of both: bearings within 1.5 standard deviations count (nearly) in full. */
const TUNING = 1.5;
/** From this kappa on (a spread of a thousandth of a milliradian) the bearings meet in one point and have no spread to speak of. */
export const KAPPA_OF_ONE_POINT = 1e12;
const MOST_ROUNDS = 500;
/** After so many rounds the weights go half way only: this stops two sets of weights from taking turns. */
const ROUNDS_BEFORE_HALVING = 60;
const SETTLED = 1e-10;
/** A bearing of less weight than this has no say. */
const NO_SAY = 1e-3;

/** Weight of a bearing at t standard deviations. Huber: min(1, c/t). Andrews: sin(t/c) / (t/c) up to c pi, then 0. */
export function robustWeight(method: RobustMethod, t: number): number {
  if (method === 'huber') return t <= TUNING ? 1 : TUNING / t;
  const u = t / TUNING;
  if (u < 1e-4) return 1 - (u * u) / 6;
  return u < Math.PI ? Math.sin(u) / u : 0;
}

/** Loss whose slope is t times the Andrews weight: c^2 (1 - cos(t/c)), flat at 2 c^2 from c pi on. What lies further off costs no more. */
export const andrewsLoss = (t: number): number =>
  t < TUNING * Math.PI ? TUNING * TUNING * (1 - Math.cos(t / TUNING)) : 2 * TUNING * TUNING;

export type Reweighted = {
  readonly point: FramePoint;
  readonly weights: Float64Array;
  /** May be Infinity: the bearings that still count meet in one point. */
  readonly kappa: number;
  /** `strayed`: the climb left for a station or for infinity; `thinned`: fewer than three bearings kept a say, so nothing checks them. */
  readonly end: 'settled' | 'unsettled' | 'strayed' | 'thinned';
};

/**
 * Iteratively reweighted likelihood from `start`: t = sqrt(2 kappa (1 - cos r)), weights from t, the place climbed anew,
 * kappa anew from the weighted mean cosine by the exact inverse, until the weights stand still.
 * @param startKappa kappa for the first weights; omitted: that of all bearings in full at `start`
 */
export function reweighted(frame: SightFrame, method: RobustMethod, start: FramePoint, startKappa?: number): Reweighted {
  let point = start;
  let weights: Float64Array = new Float64Array(frame.x.length).fill(1);
  let kappa = startKappa ?? concentrationOf(shortfallAt(frame, weights, point) / weights.length);
  if (kappa >= KAPPA_OF_ONE_POINT) return { point, weights, kappa: Infinity, end: 'settled' };
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const wanted = weightsAt(frame, method, point, kappa);
    const next = round < ROUNDS_BEFORE_HALVING ? wanted : wanted.map((weight, i) => (weight + weights[i]!) / 2);
    const change = next.reduce((most, weight, i) => Math.max(most, Math.abs(weight - weights[i]!)), 0);
    weights = next;
    if (weights.filter((weight) => weight >= NO_SAY).length < Math.min(3, weights.length)) return { point, weights, kappa, end: 'thinned' };
    const found = climb(frame, weights, point);
    point = found.point;
    if (found.end !== 'peak') return { point, weights, kappa, end: 'strayed' };
    kappa = concentrationOf(found.shortfall / weights.reduce((sum, weight) => sum + weight, 0));
    if (kappa >= KAPPA_OF_ONE_POINT) return { point, weights, kappa: Infinity, end: 'thinned' };
    if (change < SETTLED) return { point, weights, kappa, end: 'settled' };
  }
  return { point, weights, kappa, end: 'unsettled' };
}

const weightsAt = (frame: SightFrame, method: RobustMethod, point: FramePoint, kappa: number): Float64Array =>
  frame.x.map((_, i) => robustWeight(method, Math.sqrt(2 * kappa * lineShortfall(frame, i, point))));

/**
 * A start for when plain likelihood has no peak because a stray bearing drags it onto a station or to infinity: the meeting of two
 * lines with the least Andrews loss over all bearings at the given kappa. Undefined where no two lines meet ahead.
 */
export function bestSupportedMeeting(frame: SightFrame, kappa: number): FramePoint | undefined {
  const loss = (point: FramePoint) =>
    frame.x.reduce((sum, _, i) => sum + andrewsLoss(Math.sqrt(2 * kappa * lineShortfall(frame, i, point))), 0);
  let best: { point: FramePoint; loss: number } | undefined;
  for (const point of meetings(frame)) {
    const here = loss(point);
    if (!best || here < best.loss) best = { point, loss: here };
  }
  return best?.point;
}
