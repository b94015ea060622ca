import { contradicts } from '../fix/support';
import { TICKS_PER_S } from '../run/state';
import { turnDeg } from '../units/angles';
import { bearingDeg, distanceM } from '../units/frames';
import { type Corner, cornersOf } from './corners';
import { groundPermits } from './groundPermits';
import { clock, linearScore, type Moment } from './habit';
import { type HabitPart, PART_NOT_SHOWN } from './habitPart';
import { type Leg, ON_COURSE_DEG, supportedDegFrom } from './legs';
import type { WalkEvidence } from './walkEvidence';

/** A change of course beyond this needs a reason. */
const COURSE_CHANGE_DEG = 60;
const LEAST_AGREEING = 2;
/** So many readings in a row against the line, and walking on is no longer steadfast. */
const AGAINST = 3;
/** A leg shorter than this has no course to speak of. */
const LEAST_LEG_M = 25;
const LEAST_LEGS = 3;
/** The line broken on one leg in three is no line. */
const NO_MARKS_SHARE = 1 / 3;
const COST_WEIGHT = 90;
const KEPT_WEIGHT = 30;

/**
 * *Keeps its line*: course changes that fewer than two agreeing readings support cost, and so does walking on against three
 * contradicting readings. Asked on legs without another purpose and outside the last 100 m, where one circles by intent; not where a
 * fix is the task.
 */
export function keepsLinePart(walk: WalkEvidence): HabitPart {
  if (walk.isFix) return PART_NOT_SHOWN;
  const legs = walk.legs.filter(
    (leg) => leg.purpose === null && !drives(walk, leg) && madeGoodM(walk, leg) >= LEAST_LEG_M && !walk.distance.isClose(leg.fromTick),
  );
  if (legs.length < LEAST_LEGS) return PART_NOT_SHOWN;
  const moments = [...changes(walk), ...legs.flatMap((leg) => walkedOnAgainst(walk, leg))];
  const costs = moments.filter(({ good }) => !good).length;
  return { score: linearScore(costs / legs.length, 0, NO_MARKS_SHARE), moments };
}

/** A line is kept on foot: aboard, the way leads where it leads. */
const drives = ({ states }: WalkEvidence, { fromTick, toTick }: Leg): boolean =>
  states.slice(fromTick, toTick + 1).some(({ vehicle }) => vehicle?.aboard);

const madeGoodM = ({ states }: WalkEvidence, { fromTick, toTick }: Leg): number => distanceM(states[fromTick]!.at, states[toTick]!.at);

/** All course changes that are asked about. A walk for a purpose is no change of line: the line before it is kept in mind. */
function changes(walk: WalkEvidence): readonly Moment[] {
  let lineDeg: number | null = null;
  return cornersOf(walk.states, COURSE_CHANGE_DEG).flatMap((corner): readonly Moment[] => {
    const before = legAt(walk.legs, corner.beforeTick);
    const after = legAt(walk.legs, corner.afterTick);
    if (before?.purpose === null) lineDeg = corner.beforeDeg;
    if (before && drives(walk, before)) lineDeg = null;
    if (!after || after.purpose !== null || drives(walk, after) || lineDeg === null) return [];
    if (Math.abs(turnDeg(lineDeg, corner.afterDeg)) <= COURSE_CHANGE_DEG || walk.distance.isClose(corner.tick)) return [];
    return judgeChange(walk, corner, lineDeg, after);
  });
}

const legAt = (legs: readonly Leg[], tick: number): Leg | undefined =>
  legs.find(({ fromTick, toTick }) => tick > fromTick && tick <= toTick);

function judgeChange(walk: WalkEvidence, corner: Corner, lineDeg: number, after: Leg): readonly Moment[] {
  const { at, afterDeg } = corner;
  if (!groundPermits(walk.world, at, lineDeg, afterDeg)) return [];
  const turnedDeg = Math.abs(turnDeg(lineDeg, afterDeg));
  const wantedDeg = supportedDegFrom(after, at) ?? after.support.bearingDeg;
  if (after.support.agreeing >= LEAST_AGREEING) {
    if (Math.abs(turnDeg(wantedDeg, afterDeg)) <= ON_COURSE_DEG) return [kept(corner, turnedDeg, after)];
    if (!groundPermits(walk.world, at, wantedDeg, afterDeg)) return [];
  }
  return [broken(corner, turnedDeg)];
}

function kept({ tick }: Corner, turnedDeg: number, { support }: Leg): Moment {
  const fromS = tick / TICKS_PER_S;
  const what = `At ${clock(fromS)} you turned ${turnedDeg.toFixed(0)} degrees when ${support.agreeing} agreeing readings asked for it.`;
  return { fromS, toS: fromS, what, next: 'Go on so: let two readings agree before you turn.', weight: KEPT_WEIGHT, good: true };
}

function broken({ tick }: Corner, turnedDeg: number): Moment {
  const fromS = tick / TICKS_PER_S;
  const what = `At ${clock(fromS)} you turned ${turnedDeg.toFixed(0)} degrees off your line, and no two agreeing readings led that way.`;
  const next = 'Keep your line until a second reading from another place agrees with the new direction.';
  return { fromS, toS: fromS, what, next, weight: COST_WEIGHT, good: false };
}

/** Did this leg go on along the course of the one before, against each of the last three readings? */
function walkedOnAgainst(walk: WalkEvidence, leg: Leg): readonly Moment[] {
  const last = leg.readings.slice(-AGAINST);
  const before = walk.legs[walk.legs.indexOf(leg) - 1];
  if (last.length < AGAINST || !before || madeGoodM(walk, before) < LEAST_LEG_M) return [];
  const courseDeg = madeGoodDeg(walk, leg);
  if (Math.abs(turnDeg(madeGoodDeg(walk, before), courseDeg)) > COURSE_CHANGE_DEG) return [];
  const line = { at: leg.start.at, bearingDeg: courseDeg };
  if (!last.every((reading) => contradicts(reading, [line]))) return [];
  if (!groundPermits(walk.world, leg.start.at, leg.start.bearingDeg, courseDeg)) return [];
  const [fromS, toS] = [leg.fromTick / TICKS_PER_S, leg.toTick / TICKS_PER_S];
  const what = `From ${clock(fromS)} you walked on although your last three readings all pointed away from that line.`;
  const next = 'When three readings contradict your line, give it up and go where they agree, or to a clearer view.';
  return [{ fromS, toS, what, next, weight: COST_WEIGHT, good: false }];
}

const madeGoodDeg = ({ states }: WalkEvidence, { fromTick, toTick }: Leg): number => bearingDeg(states[fromTick]!.at, states[toTick]!.at);
