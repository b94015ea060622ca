import { isDone } from '../run/state';
import type { Scenario } from '../scenario/schema';
import type { AtStart } from './atStart';
import { type LessonShown, lessonsTaught } from './lessonsTaught';
import { medianOf } from './median';
import { type MisleadingPlace, misleadingPlaces, misleads } from './misleads';
import type { RehearsedWalk } from './rehearsedWalk';
import { type Unfair, unfairness } from './unfair';

/** What the rehearsals say of an exercise. */
export type Verdict = {
  readonly walks: number;
  readonly found: number;
  readonly solvable: 'yes' | 'mostly' | 'seldom' | 'no';
  /** Of the walks that found the tag, seconds; `null` where none did. */
  readonly timeS: { readonly fastest: number; readonly middle: number; readonly slowest: number } | null;
  readonly bearings: number;
  /** `null` without a bearing. */
  readonly misleadingShare: number | null;
  readonly middleErrorDeg: number | null;
  readonly places: readonly MisleadingPlace[];
  /** The level that share found and share misleading speak for. */
  readonly likeLevel: number;
  readonly lessons: readonly LessonShown[];
  readonly teachesItsLesson: boolean;
  readonly unfair: readonly Unfair[];
};

/** Nine of ten walks find the tag: chance may take one. */
const SOLVED_SHARE = 0.9;
const MOSTLY_SHARE = 0.6;
/** Share of misleading bearings up to which an exercise is like level 1, 2, 3 and 4: the guide's hardly any and a third, with even steps between. */
const LEVEL_SHARES = [0.05, 0.12, 0.2, 0.28] as const;

/** @throws RangeError without a walk */
export function verdictOf(scenario: Scenario, start: AtStart, walks: readonly RehearsedWalk[]): Verdict {
  if (walks.length === 0) throw new RangeError('a verdict needs one walk or more');
  const found = walks.filter(({ ending }) => isDone(ending));
  const times = found.map(({ timeS }) => timeS);
  const middle = medianOf(times);
  const bearings = walks.flatMap((walk) => walk.bearings);
  const misleadingShare = bearings.length === 0 ? null : bearings.filter(misleads).length / bearings.length;
  const share = found.length / walks.length;
  const lessons = lessonsTaught(scenario, start, walks);
  const bands = LEVEL_SHARES.filter((most) => (misleadingShare ?? 0) > most).length;
  return {
    walks: walks.length,
    found: found.length,
    solvable: share >= SOLVED_SHARE ? 'yes' : share >= MOSTLY_SHARE ? 'mostly' : found.length > 0 ? 'seldom' : 'no',
    timeS: middle === null ? null : { fastest: Math.min(...times), middle, slowest: Math.max(...times) },
    bearings: bearings.length,
    misleadingShare,
    middleErrorDeg: medianOf(bearings.map(({ errorDeg }) => Math.abs(errorDeg))),
    places: misleadingPlaces(walks),
    // Where not all find the tag it is hard whatever the bearings say.
    likeLevel: Math.max(1 + bands, share >= SOLVED_SHARE ? 1 : 4),
    lessons,
    teachesItsLesson: lessons.some(({ lesson }) => lesson === scenario.lesson),
    unfair: unfairness(scenario, start, walks),
  };
}
