import type { Grade } from '../technique/grade';
import { HABIT_IDS, type HabitId, type HabitResult, type Moment } from '../technique/habit';

export type Habits = Grade['habits'];

/** The two best and the two worst moments of a habit, each pair heaviest first. */
export type BestAndWorst = { readonly best: readonly Moment[]; readonly worst: readonly Moment[] };

export function bestAndWorst({ moments }: Pick<HabitResult, 'moments'>): BestAndWorst {
  const top = (good: boolean) =>
    moments
      .filter((moment) => moment.good === good)
      .sort((a, b) => b.weight - a.weight)
      .slice(0, 2);
  return { best: top(true), worst: top(false) };
}

/** The one moment that a habit's line carries: its heaviest failing, or where there is none its best. */
export function tellingMoment(result: Pick<HabitResult, 'moments'>): Moment | null {
  const { best, worst } = bestAndWorst(result);
  return worst[0] ?? best[0] ?? null;
}

/** From here on a habit needs no mending. */
const GOOD_ENOUGH = 85;

/** What to do differently next time, and why: a sentence each. */
export type Advice = {
  readonly habit: HabitId | null;
  readonly sentence: string;
  readonly because: string;
  readonly moment: Moment | null;
};

/** The sentence that matters most: the next action of the heaviest failing of the weakest habit that the run showed. */
export function mattersMost(habits: Habits): Advice {
  const shown = HABIT_IDS.filter((id) => id !== 'keepPractising' && habits[id].score !== null);
  const weakest = shown.sort((a, b) => habits[a].score! - habits[b].score!)[0];
  if (!weakest) {
    const sentence = 'Too short a run to say much: walk farther and take more bearings.';
    return { habit: null, sentence, because: '', moment: null };
  }
  const moment = bestAndWorst(habits[weakest]).worst[0];
  if (habits[weakest].score! >= GOOD_ENOUGH || !moment) {
    const sentence = 'Every habit this run could show held up. Take a harder exercise.';
    return { habit: null, sentence, because: '', moment: null };
  }
  return { habit: weakest, sentence: moment.next, because: moment.what, moment };
}

/** What a learner said of each habit before the grade was seen: 1 not at all … 5 always. */
export type Ratings = Partial<Readonly<Record<HabitId, number>>>;

/** A rating on the scale of the grade: 1 is 0, 5 is 100. */
export const ratedScore = (rating: number): number => (rating - 1) * 25;

/** Apart by more than this, seeing oneself is part of what is to be learned. */
const APART = 25;

/** The habit where self-rating and grade lie farthest apart, if they do at all; `over` where the learner rated higher. */
export function farthestApart(
  habits: Habits,
  ratings: Ratings,
): { readonly habit: HabitId; readonly by: number; readonly over: boolean } | null {
  const gaps = HABIT_IDS.flatMap((habit) => {
    const [score, own] = [habits[habit].score, ratings[habit]];
    if (score === null || own === undefined) return [];
    const by = ratedScore(own) - score;
    return [{ habit, by: Math.abs(by), over: by > 0 }];
  });
  const widest = gaps.sort((a, b) => b.by - a.by)[0];
  return widest && widest.by > APART ? widest : null;
}
