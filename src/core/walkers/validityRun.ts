import { type Exercise, openExercise } from '../run/exercise';
import type { Replay } from '../run/replay';
import { TICKS_PER_S } from '../run/state';
import { soughtTag } from '../run/task';
import { LESSONS, type Scenario } from '../scenario/schema';
import { judgeView } from '../technique/clearView';
import { gradeReplay } from '../technique/grade';
import type { Evidence } from '../technique/habit';
import { HABIT_IDS, type HabitId } from '../technique/habit';
import type { Outlook } from '../technique/outlook';
import { quietGain } from '../technique/quietGain';
import { setThenSweep } from '../technique/setThenSweep';
import { judgeWalk } from '../technique/walkAndListen';
import { quickestWalk } from '../world/reachable';
import { drawExercise } from './drawExercise';
import { playWalker } from './play';
import type { Walker } from './policy';

/** Scores by habit, `null` where not shown. */
export type Scores = Readonly<Record<HabitId, number | null>>;

/** What one walk of the study gave. */
export type StudyRow = {
  readonly exercise: string;
  readonly walker: string;
  readonly found: boolean;
  readonly timeS: number;
  /** 2.5 times the shortest walk and 5 minutes. */
  readonly boundS: number;
  readonly technique: number | null;
  readonly scores: Scores;
};

/** The study draws all levels: on the short ways of the first alone there are seldom three places to read from. */
const STUDY_LEVELS = [1, 2, 3, 4, 5] as const;

/** The drawn exercise of a number: every lesson in turn, levels in turn by dozens. */
export const studyExercise = (index: number): Scenario =>
  drawExercise(index, LESSONS[index % LESSONS.length]!, STUDY_LEVELS[Math.floor(index / LESSONS.length + index) % STUDY_LEVELS.length]!);

/** 2.5 times the shortest walk to the tag that is sought and 5 minutes, seconds. */
export function boundS({ scenario, world }: Exercise): number {
  const at = ([eM, nM]: readonly [number, number]) => ({ eM, nM });
  const walk = quickestWalk(world, at(scenario.start.at), at(scenario.tags[soughtTag(scenario)]!.at), scenario.limits.paceMPerS);
  return 2.5 * (walk?.seconds ?? Number.POSITIVE_INFINITY) + 300;
}

/** One walk, graded; `run` where the same walk was played already. */
export function studyWalk(
  exercise: Exercise,
  walker: Walker,
  seed: number,
  run = playWalker(exercise, walker, seed),
): { readonly row: StudyRow; readonly run: Replay } {
  const grade = gradeReplay({ exercise, run }, { practice: walker.practice });
  const scores = Object.fromEntries(HABIT_IDS.map((id) => [id, grade.habits[id].score])) as Scores;
  const { title, seed: ground } = exercise.scenario;
  const timeS = run.state.tick / TICKS_PER_S;
  const found = run.state.ending === 'found';
  const row = {
    exercise: `${title} (${ground})`,
    walker: walker.id,
    found,
    timeS,
    boundS: boundS(exercise),
    technique: grade.technique,
    scores,
  };
  return { row, run };
}

/** Opens the drawn exercise of a number and lets walkers do it one after the other. */
export function studyWalks(index: number, walkers: readonly Walker[]): readonly StudyRow[] {
  const exercise = openExercise(studyExercise(index));
  // Walkers that differ in their logbook alone make the same walk.
  const played = new Map<Walker['play'], Replay>();
  return walkers.map((walker) => {
    const { row, run } = studyWalk(exercise, walker, 1, played.get(walker.play));
    played.set(walker.play, run);
    return row;
  });
}

/** The four habits of a run, with a view of the ground given apart. */
export function runScores(evidence: Evidence, outlook: Outlook): Omit<Scores, 'keepPractising'> {
  return {
    quietGain: quietGain.judge(evidence).score,
    setThenSweep: setThenSweep.judge(evidence).score,
    walkAndListen: judgeWalk(evidence, outlook).score,
    clearView: judgeView(evidence, outlook).score,
  };
}
