import { meetingOf } from './bearingLine';
import { type Climb, climb } from './climb';
import { shortfallAt, shortfallFarAway, shortfallOnStation } from './likelihood';
import { type FramePoint, type SightFrame, toFrame } from './sightFrame';

/**
 * Where the likelihood is highest over the whole plane. On a station and infinitely far away it has no ordinary peak, only a
 * limit; where such a limit is the highest value there is no fix, and `kind` says which.
 */
export type HighestPlace = ({ readonly kind: 'peak' } & Peak) | Limit;

export type Peak = { readonly point: FramePoint; readonly shortfall: number };

export type Limit =
  | { readonly kind: 'station'; readonly station: number; readonly shortfall: number }
  | { readonly kind: 'far'; readonly shortfall: number };

/** Climbs from meetings of two lines, and from the general pattern of starts, that one search makes. */
const MEETING_CLIMBS = 12;
const PATTERN_CLIMBS = 6;
/** Rounding of a sum of cosines: limits must win by more than this to count. */
const ROUNDING = 1e-12;

/**
 * Direct search: the best of many starts (all meetings of two lines, points along every line, a polar pattern over the ground)
 * are climbed, and the best peak is held against the limits on the stations and far away.
 */
export function highestPlace(frame: SightFrame, weights: ArrayLike<number>): HighestPlace {
  const peak = highestPeak(frame, weights);
  return (peak && limitAbove(frame, weights, peak.shortfall)) ?? (peak ? { kind: 'peak', ...peak } : highestLimit(frame, weights));
}

/** The limit that beats a peak of this shortfall; undefined where none does. */
export function limitAbove(frame: SightFrame, weights: ArrayLike<number>, shortfall: number): Limit | undefined {
  const limit = highestLimit(frame, weights);
  return limit.shortfall < shortfall - ROUNDING ? limit : undefined;
}

/** The highest of the limits on every station that counts and far away. */
function highestLimit(frame: SightFrame, weights: ArrayLike<number>): Limit {
  let highest: Limit = { kind: 'far', shortfall: shortfallFarAway(frame, weights) };
  for (let station = 0; station < frame.x.length; station++) {
    const shortfall = shortfallOnStation(frame, weights, station);
    if (weights[station]! > 0 && shortfall < highest.shortfall) highest = { kind: 'station', station, shortfall };
  }
  return highest;
}

/** The highest ordinary peak, whatever the limits are; undefined where no climb ended on one. */
export function highestPeak(frame: SightFrame, weights: ArrayLike<number>): Peak | undefined {
  const value = (point: FramePoint) => shortfallAt(frame, weights, point);
  const starts = [
    ...distinctBest(frame, meetings(frame), value, MEETING_CLIMBS),
    ...distinctBest(frame, pattern(frame), value, PATTERN_CLIMBS),
  ];
  let best: Climb | undefined;
  for (const start of starts) {
    const found = climb(frame, weights, start);
    if (found.end === 'peak' && (!best || found.shortfall < best.shortfall)) best = found;
  }
  return best && { point: best.point, shortfall: best.shortfall };
}

/** Every place where two lines meet ahead. */
export function meetings(frame: SightFrame): FramePoint[] {
  const found: FramePoint[] = [];
  for (let i = 0; i < frame.lines.length; i++) {
    for (let j = 0; j < i; j++) {
      const meeting = meetingOf(frame.lines[i]!, frame.lines[j]!);
      if (meeting.kind === 'ahead') found.push(toFrame(frame, meeting.point));
    }
  }
  return found;
}

/** Points along every line and on rings round the middle, from a hundredth to a hundred times the spread of the stations. */
export function pattern(frame: SightFrame): FramePoint[] {
  const found: FramePoint[] = [];
  for (let power = -2; power <= 2; power += 0.25) {
    const reach = 10 ** power;
    for (let i = 0; i < frame.x.length; i++)
      found.push({ x: frame.x[i]! + reach * frame.sine[i]!, y: frame.y[i]! + reach * frame.cosine[i]! });
    for (let turn = 0; turn < 24; turn++) {
      const rad = (turn * Math.PI) / 12;
      found.push({ x: reach * Math.sin(rad), y: reach * Math.cos(rad) });
    }
  }
  return found;
}

/** The best `count` points, best first, none within a fifth of its distance to the middle of a better one. */
function distinctBest(frame: SightFrame, points: readonly FramePoint[], value: (point: FramePoint) => number, count: number): FramePoint[] {
  const ranked = points.map((point) => ({ point, value: value(point) })).sort((a, b) => a.value - b.value);
  const kept: FramePoint[] = [];
  for (const { point } of ranked) {
    if (kept.length === count) break;
    const apart = 0.2 * Math.min(1 + Math.hypot(point.x, point.y), stationDistance(frame, point));
    if (kept.every((other) => Math.hypot(other.x - point.x, other.y - point.y) > apart)) kept.push(point);
  }
  return kept;
}

const stationDistance = (frame: SightFrame, point: FramePoint): number =>
  frame.x.reduce((nearest, x, i) => Math.min(nearest, Math.hypot(point.x - x, point.y - frame.y[i]!)), Infinity);
