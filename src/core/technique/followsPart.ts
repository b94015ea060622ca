import { TICKS_PER_S } from '../run/state';
import { toRad, turnDeg } from '../units/angles';
import { bearingDeg, distanceM, type MapPoint } from '../units/frames';
import { groundPermits } from './groundPermits';
import { clock, linearScore, type Moment } from './habit';
import { type HabitPart, PART_NOT_SHOWN } from './habitPart';
import { type Leg, ON_COURSE_DEG, supportedDegFrom } from './legs';
import { courseDegAt } from './onTheMove';
import type { WalkEvidence } from './walkEvidence';

/** Nine tenths of the way on course is full marks: nobody walks a ruler's line. */
const FULL_SHARE = 0.9;
/** A quarter of all courses lie within 45 degrees by chance. */
const CHANCE_SHARE = 0.25;
const LEAST_ASKED_S = 60;
const LEAST_MOMENT_S = 15;

/** One second of walking at which the question was asked. */
type Step = { readonly tick: number; readonly offDeg: number; readonly leg: Leg };

/** *Follows the sound*: is the course within 45 degrees of the best-supported direction, ground permitting? */
export function followsPart(walk: WalkEvidence): HabitPart {
  if (walk.fromStations) return PART_NOT_SHOWN;
  const steps = walk.legs.filter(({ purpose }) => purpose === null).flatMap((leg) => stepsOf(walk, leg));
  if (steps.length < LEAST_ASKED_S) return PART_NOT_SHOWN;
  const share = steps.filter(isOnCourse).length / steps.length;
  return { score: linearScore(share, FULL_SHARE, CHANCE_SHARE), moments: stretches(steps).flatMap(momentOf) };
}

const isOnCourse = ({ offDeg }: Step): boolean => offDeg <= ON_COURSE_DEG;

function stepsOf(walk: WalkEvidence, leg: Leg): readonly Step[] {
  const { states, walking, distance, world } = walk;
  const steps: Step[] = [];
  for (let tick = leg.fromTick; tick <= leg.toTick; tick += TICKS_PER_S) {
    // Aboard, the way leads where it leads.
    if (!walking[tick] || distance.isClose(tick) || states[tick]!.vehicle?.aboard) continue;
    const { at } = states[tick]!;
    const wantedDeg = wantedDegAt(walk, leg, at);
    if (wantedDeg === null) continue;
    const courseDeg = courseDegAt(states, tick);
    const step = { tick, offDeg: Math.abs(turnDeg(wantedDeg, courseDeg)), leg };
    if (isOnCourse(step) || groundPermits(world, at, wantedDeg, courseDeg)) steps.push(step);
  }
  return steps;
}

/**
 * The supported direction from a place on the leg. Two noisy lines often meet far short of the tag. Who has passed such a point has
 * still only the word of the last reading, so the direction of setting out stands for as far as least gain said the tag was away;
 * farther on, it was time to read again, and the point counts.
 */
function wantedDegAt({ distance }: WalkEvidence, leg: Leg, at: MapPoint): number | null {
  const { start, support, fromTick } = leg;
  const towardDeg = supportedDegFrom(leg, at);
  if (towardDeg === null || !support.point) return towardDeg;
  if (aheadM(start.at, support.bearingDeg, at) <= distanceM(start.at, support.point)) return towardDeg;
  const saidM = distance.atTickM(fromTick);
  return saidM === null || distanceM(start.at, at) <= saidM ? support.bearingDeg : towardDeg;
}

/** How far a place lies ahead of another along a direction. */
const aheadM = (from: MapPoint, alongDeg: number, at: MapPoint): number =>
  distanceM(from, at) * Math.cos(toRad(turnDeg(alongDeg, bearingDeg(from, at))));

/** Neighbouring steps of one leg that were all on course, or all off it. */
function stretches(steps: readonly Step[]): readonly (readonly Step[])[] {
  const found: Step[][] = [];
  for (const step of steps) {
    const last = found.at(-1);
    if (last && last[0]!.leg === step.leg && isOnCourse(last[0]!) === isOnCourse(step)) last.push(step);
    else found.push([step]);
  }
  return found;
}

function momentOf(steps: readonly Step[]): readonly Moment[] {
  if (steps.length < LEAST_MOMENT_S) return [];
  const [fromS, toS] = [steps[0]!.tick / TICKS_PER_S, steps.at(-1)!.tick / TICKS_PER_S];
  if (isOnCourse(steps[0]!)) {
    const what = `From ${clock(fromS)} to ${clock(toS)} you walked where your readings pointed.`;
    return [{ fromS, toS, what, next: 'Go on so, and take the next reading on the way.', weight: steps.length / 4, good: true }];
  }
  const offDeg = steps.reduce((sum, step) => sum + step.offDeg, 0) / steps.length;
  return [
    {
      fromS,
      toS,
      what: `From ${clock(fromS)} to ${clock(toS)} you walked ${Math.ceil(offDeg)} degrees off the direction your readings supported best.`,
      next: 'Follow the sound; leave it only for a clearer view, a crossing bearing or the other side of wires, and read there within five minutes.',
      weight: steps.length,
      good: false,
    },
  ];
}
