import { meetingOf } from '../fix/bearingLine';
import { bestSupportedDirection, type SupportedDirection } from '../fix/support';
import { TICKS_PER_S } from '../run/state';
import { turnDeg } from '../units/angles';
import { bearingDeg, distanceM, type MapPoint } from '../units/frames';
import type { World } from '../world/world';
import { acrossWires } from './acrossWires';
import type { Evidence } from './habit';
import type { Outlook } from './outlook';
import type { Reading } from './readings';
import { tunedTag } from './tunedTag';

/** A reading, and the tag that it was taken of: bearings of two tags say nothing of one another. */
export type TagReading = Reading & { readonly tag: number };

/**
 * Why a leg may lead away from the sound: to a better view, to a crossing bearing, or to the other side of wires. A leg that
 * follows the sound needs no excuse and has none.
 */
export type Purpose = 'view' | 'crossing' | 'wires';

/** The walk from one reading to the next, or to the run's end. */
export type Leg = {
  readonly fromTick: number;
  readonly toTick: number;
  readonly start: TagReading;
  readonly end: TagReading | null;
  /** The readings of this tag up to the start, in time order; the last is the start itself. */
  readonly readings: readonly TagReading[];
  readonly support: SupportedDirection;
  readonly purpose: Purpose | null;
};

/** On course is within this of the best-supported direction. */
export const ON_COURSE_DEG = 45;
/** A walk for a purpose ends at its place within this. */
const PURPOSE_WITHIN_S = 300;
export const BETTER_VIEW_PERCENTILES = 20;
/** Flatter crossings leave an area twice as long as a square one and more (1 / sqrt(1 - cos 30 degrees) = 2.73). */
const LEAST_CROSSING_DEG = 30;

export const withTags = (evidence: Evidence, readings: readonly Reading[]): readonly TagReading[] =>
  readings.map((reading) => ({ ...reading, tag: tunedTag(evidence, evidence.run.states[reading.tick]!) }));

/** All legs of a run. Before the first reading there is none: nothing was known yet. */
export function legsOf(evidence: Evidence, readings: readonly TagReading[], walking: Uint8Array, outlook: Outlook): readonly Leg[] {
  const lastTick = evidence.run.states.length - 1;
  return readings.flatMap((start, i) => {
    const end = readings[i + 1] ?? null;
    const known = readings.slice(0, i + 1).filter(({ tag }) => tag === start.tag);
    const support = bestSupportedDirection(known, start.at);
    if (!support) return [];
    const setOff = walking.indexOf(1, start.tick);
    const inTime = end !== null && setOff >= 0 && end.tick - setOff <= PURPOSE_WITHIN_S * TICKS_PER_S;
    const leadsAside = inTime && Math.abs(turnDeg(support.bearingDeg, bearingDeg(start.at, end.at))) > ON_COURSE_DEG;
    const purpose = leadsAside ? purposeOf(evidence.exercise.world, outlook, start, end) : null;
    return [{ fromTick: start.tick, toTick: end?.tick ?? lastTick, start, end, readings: known, support, purpose }];
  });
}

function purposeOf(world: World, outlook: Outlook, start: TagReading, end: TagReading): Purpose | null {
  if (start.tag === end.tag && crossesWell(start, end)) return 'crossing';
  if (acrossWires(world, start.at, end.at)) return 'wires';
  const rise = outlook.percentileAmong(end.at, start.at) - outlook.percentileAmong(start.at, start.at);
  return rise >= BETTER_VIEW_PERCENTILES ? 'view' : null;
}

/** Do the two bearings meet ahead of both, at 30 degrees or more? */
function crossesWell(a: Reading, b: Reading): boolean {
  const betweenDeg = Math.abs(turnDeg(a.bearingDeg, b.bearingDeg));
  return Math.min(betweenDeg, 180 - betweenDeg) >= LEAST_CROSSING_DEG && meetingOf(a, b).kind === 'ahead';
}

/** Nearer to the supported point than this, its direction is mostly the readings' own error. */
const ON_THE_POINT_M = 30;

/** The best-supported direction of a leg seen from a place on it, degrees; `null` on top of the point it leads to. */
export function supportedDegFrom({ support }: Leg, at: MapPoint): number | null {
  if (!support.point) return support.bearingDeg;
  return distanceM(at, support.point) < ON_THE_POINT_M ? null : bearingDeg(at, support.point);
}
