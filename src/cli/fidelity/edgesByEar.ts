import { hearingChance } from '../../core/ear/hear';
import { leastGainDb } from '../../core/ear/leastGain';
import { USUAL_LISTENER } from '../../core/ear/loudness';
import { FULL_GAIN_DB } from '../../core/receiver/limiter';
import { receive } from '../../core/receiver/receive';
import { clearestDialMHz } from '../../core/receiver/tuning';
import type { Exercise } from '../../core/run/exercise';
import { bestAtPlace, bestHold, noiseDbm, tagHere } from '../../core/run/sense';
import { turnDeg } from '../../core/units/angles';
import { toDb } from '../../core/units/decibels';
import { bearingDeg, type MapPoint } from '../../core/units/frames';

const CHEST_M = 1.7;
const ANTENNA = 'yagi3' as const;

/** A place at which one listens to a tag with the hand Yagi on its best axis, the gain set over least gain. */
export type Post = {
  /** Way to the tag, and the heading on which it is loudest, degrees. */
  readonly towardDeg: number;
  readonly loudestDeg: number;
  /** Chance that the pulse is heard on a heading. */
  readonly chance: (headingDeg: number) => number;
};

/** `null` where no setting of the receiver brings the tag; where full gain is not enough for the excess, full gain. */
export function postAt(exercise: Exercise, tag: number, at: MapPoint, excessDb: number): Post | null {
  const here = tagHere(exercise, tag, at, CHEST_M, 0);
  const best = bestHold(exercise, here, ANTENNA);
  const leastDb = leastGainDb(bestAtPlace(exercise, here, best, ANTENNA), USUAL_LISTENER);
  if (leastDb === null) return null;
  const netDb = Math.min(FULL_GAIN_DB, leastDb + excessDb);
  const attenuatorDb = netDb < 0 ? 30 : 0;
  const setting = { gainDb: netDb + attenuatorDb, attenuatorDb, tunedMHz: clearestDialMHz(here.carrierMHz) };
  const hears = exercise.antenna(ANTENNA, tag).fan(here.arrivals.waves);
  const bestSquared = hears(best.headingDeg, best.rollDeg);
  const noise = noiseDbm(exercise);
  const chance = (headingDeg: number): number => {
    const powerDbm = best.powerDbm + toDb(hears(headingDeg, best.rollDeg) / bestSquared);
    const { isotropicDbm, carrierMHz: tagMHz } = here;
    return hearingChance(
      receive({ powerDbm, isotropicDbm, tagMHz, ...noise, buzzDbm: Number.NEGATIVE_INFINITY }, setting),
      exercise.scenario.tags[tag]!.pulseMs,
      USUAL_LISTENER,
    );
  };
  return { towardDeg: bearingDeg(at, here.tagAt), loudestDeg: best.headingDeg, chance };
}

type Turn = { readonly stepDeg: number; readonly mostDeg: number };
const EDGES: Turn = { stepDeg: 3, mostDeg: 110 };
const NULLS: Turn = { stepDeg: 2, mostDeg: 60 };

/**
 * Error of a bearing by two edges, degrees: from the loudest heading to one side, then to the other, a pulse every 3 degrees, until
 * two pulses running are not heard; the bearing is half way between.
 */
export function twoEdgesErrorDeg(post: Post, random: () => number): number {
  const edge = (side: 1 | -1) => edgeFrom(post, post.loudestDeg + EDGES.stepDeg * (random() - 0.5), side, EDGES, random, false);
  const [right, left] = [edge(1), edge(-1)];
  return turnDeg(post.towardDeg, left + (right - left) / 2);
}

/**
 * Error of a bearing by the mean of two nulls, degrees: the gaps at the antenna's two ends, each from where the beep goes to where it
 * comes back, a pulse every 2 degrees.
 */
export function twoNullsErrorDeg(post: Post, random: () => number): number {
  const gap = (side: 1 | -1) => {
    const from = post.loudestDeg + side * 90 + NULLS.stepDeg * (random() - 0.5);
    const out = edgeFrom(post, from, 1, NULLS, random, true);
    const back = edgeFrom(post, from, -1, NULLS, random, true);
    return (out + back) / 2;
  };
  return turnDeg(post.towardDeg, (gap(1) + gap(-1)) / 2);
}

/** Turns from a heading to one side until two pulses running are not heard, or are: half way to the first of them. */
function edgeFrom(
  post: Post,
  fromDeg: number,
  side: 1 | -1,
  { stepDeg, mostDeg }: Turn,
  random: () => number,
  untilHeard: boolean,
): number {
  let [last, running] = [fromDeg, 0];
  for (let turned = stepDeg; turned <= mostDeg; turned += stepDeg) {
    const heading = fromDeg + side * turned;
    running = random() < post.chance(heading) === untilHeard ? running + 1 : 0;
    if (running === 0) last = heading;
    if (running === 2) break;
  }
  return last + (side * stepDeg) / 2;
}
