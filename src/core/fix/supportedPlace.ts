import { toRad, turnDeg } from '../units/angles';
import type { MapPoint } from '../units/frames';
import type { BearingLine } from './bearingLine';
import { climb } from './climb';
import { lineShortfall } from './likelihood';
import { meetings, pattern } from './peakSearch';
import { andrewsLoss, robustWeight } from './robust';
import { type FramePoint, frameOf, type SightFrame, toFrame, toMap } from './sightFrame';

/** Where the robust likelihood of a few readings is highest: at a place, or infinitely far away along a bearing. */
export type SupportedPlace =
  | { readonly kind: 'place'; readonly point: MapPoint; readonly logLikelihood: number }
  | { readonly kind: 'far'; readonly bearingDeg: number; readonly logLikelihood: number };

/**
 * Robust log-likelihood of places for bearings of known spread: minus the sum of Andrews losses, 0 where all lines meet. A reading
 * more than 1.5 pi spreads off costs no more than one just there, so a bounce can't drag the place towards itself.
 * @throws RangeError for no lines
 */
export function robustLogLikelihood(lines: readonly BearingLine[], sdDeg: number): (point: MapPoint) => number {
  const frame = frameOf(lines);
  return (point) => -lossAt(frame, toFrame(frame, point), sdDeg);
}

const spreadsOff = (frame: SightFrame, line: number, point: FramePoint, sdDeg: number): number =>
  Math.sqrt(2 * lineShortfall(frame, line, point)) / toRad(sdDeg);

function lossAt(frame: SightFrame, point: FramePoint, sdDeg: number): number {
  let sum = 0;
  for (let i = 0; i < frame.x.length; i++) sum += andrewsLoss(spreadsOff(frame, i, point, sdDeg));
  return sum;
}

/** The maximum of the robust likelihood, by direct search over meetings and a pattern of places, then a climb. @throws RangeError for no lines */
export function supportedPlace(lines: readonly BearingLine[], sdDeg: number): SupportedPlace {
  const frame = frameOf(lines);
  const far = bestFar(lines, sdDeg);
  let best: FramePoint | undefined;
  let loss = far.loss;
  for (const start of [...meetings(frame), ...pattern(frame)]) {
    const here = lossAt(frame, start, sdDeg);
    if (here < loss - 1e-9) [best, loss] = [start, here];
  }
  if (!best) return { kind: 'far', bearingDeg: far.bearingDeg, logLikelihood: -far.loss };
  const point = refined(frame, best, sdDeg);
  return { kind: 'place', point: toMap(frame, point), logLikelihood: -lossAt(frame, point, sdDeg) };
}

/** Reweighted climbs at the known spread; a climb that does not gain ends them. */
function refined(frame: SightFrame, start: FramePoint, sdDeg: number): FramePoint {
  let point = start;
  let loss = lossAt(frame, point, sdDeg);
  for (let round = 0; round < 50; round++) {
    const from = point;
    const weights = frame.x.map((_, i) => robustWeight('andrews', spreadsOff(frame, i, from, sdDeg)));
    const found = climb(frame, weights, from);
    const there = lossAt(frame, found.point, sdDeg);
    if (found.end !== 'peak' || !(there < loss - 1e-12)) break;
    point = found.point;
    loss = there;
  }
  return point;
}

/** The direction in which most bearings agree, were the tag infinitely far away. */
export function bestFar(lines: readonly BearingLine[], sdDeg: number): { bearingDeg: number; loss: number } {
  const lossOf = (bearingDeg: number) =>
    lines.reduce(
      (sum, line) => sum + andrewsLoss((2 * Math.sin(Math.abs(toRad(turnDeg(bearingDeg, line.bearingDeg))) / 2)) / toRad(sdDeg)),
      0,
    );
  let best = { bearingDeg: 0, loss: Infinity };
  const trial = (bearingDeg: number) => {
    const loss = lossOf(bearingDeg);
    if (loss < best.loss) best = { bearingDeg: ((bearingDeg % 360) + 360) % 360, loss };
  };
  for (const { bearingDeg } of lines) trial(bearingDeg);
  // Halving steps round the best of a degree's pattern: the loss is smooth, a hundredth of a degree is ample.
  for (let deg = 0; deg < 360; deg++) trial(deg);
  for (let stepDeg = 0.5; stepDeg > 0.005; stepDeg /= 2) {
    trial(best.bearingDeg + stepDeg);
    trial(best.bearingDeg - stepDeg);
  }
  return best;
}
