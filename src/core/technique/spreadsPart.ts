import { TICKS_PER_S } from '../run/state';
import { distanceM } from '../units/frames';
import { acrossWires } from './acrossWires';
import { clock, linearScore, type Moment } from './habit';
import { type HabitPart, PART_NOT_SHOWN } from './habitPart';
import type { TagReading } from './legs';
import type { WalkEvidence } from './walkEvidence';

/** Nearer together than this, two bearings fade alike and cross at nothing. */
const LEAST_APART_M = 15;
/** Farther apart is never asked for, however far the tag seems. */
const MOST_APART_M = 150;
/** At 5 % of the distance two lines cross at about 3 degrees: less than a bearing's own error. */
const SHARE_OF_DISTANCE = 0.05;
/** A repeat this near replaces the earlier reading. */
const REPEAT_M = 10;
/** Readings are held against the last five, those that still count. */
const COUNTED = 5;
/** Half of what is asked for, and less, earns nothing. */
const NO_MARKS_SHARE = 0.5;
const LEAST_PAIRS = 2;
const PAIR_WEIGHT = 60;

/** How far apart readings have to be where least gain suggests this distance; unknown is far. */
export const neededApartM = (suggestedM: number | null): number =>
  Math.max(LEAST_APART_M, Math.min(MOST_APART_M, suggestedM === null ? MOST_APART_M : SHARE_OF_DISTANCE * suggestedM));

type Pair = { readonly later: TagReading; readonly earlier: TagReading; readonly apartM: number; readonly neededM: number };

/** *Spreads*: are readings far enough apart to say something new? */
export function spreadsPart(walk: WalkEvidence): HabitPart {
  const pairs = pairsOf(walk);
  if (pairs.length < LEAST_PAIRS) return PART_NOT_SHOWN;
  const marks = pairs.map(({ apartM, neededM }) => linearScore(apartM / neededM, 1, NO_MARKS_SHARE));
  return { score: marks.reduce((sum, mark) => sum + mark, 0) / marks.length, moments: pairs.map((pair, i) => momentOf(pair, marks[i]!)) };
}

/** Each reading with the nearest earlier one that still counts; repeats replace, and pairs across wires are exempt. */
function pairsOf({ world, readings, distance }: WalkEvidence): readonly Pair[] {
  const pairs: Pair[] = [];
  const standing: TagReading[] = [];
  for (const later of readings) {
    const repeated = standing.findIndex(({ at, tag }) => tag === later.tag && distanceM(at, later.at) <= REPEAT_M);
    if (repeated >= 0) {
      standing.splice(repeated, 1);
    } else {
      const counted = standing.filter(({ tag }) => tag === later.tag).slice(-COUNTED);
      const asked = counted.filter(({ at }) => !acrossWires(world, at, later.at));
      const neededM = neededApartM(distance.atTickM(later.tick));
      const near = asked.map((earlier) => ({ later, earlier, neededM, apartM: distanceM(earlier.at, later.at) }));
      const nearest = near.sort((a, b) => a.apartM - b.apartM)[0];
      if (nearest) pairs.push(nearest);
    }
    standing.push(later);
  }
  return pairs;
}

function momentOf({ earlier, later, apartM, neededM }: Pair, mark: number): Moment {
  const [fromS, toS] = [earlier.tick / TICKS_PER_S, later.tick / TICKS_PER_S];
  const needed = Math.ceil(neededM);
  if (mark >= 100) {
    const what = `At ${clock(toS)} you took a reading ${apartM.toFixed(0)} m from the nearest earlier one: a line of its own.`;
    return { fromS, toS, what, next: 'Go on spreading your readings so.', weight: PAIR_WEIGHT / 2, good: true };
  }
  return {
    fromS,
    toS,
    what: `At ${clock(toS)} you took a reading ${Math.floor(apartM)} m from an earlier one; least gain asked for ${needed} m.`,
    next: `Walk at least ${needed} m before the next reading there, so that the lines can cross.`,
    weight: (PAIR_WEIGHT * (100 - mark)) / 100,
    good: false,
  };
}
