import { existsSync, readdirSync } from 'node:fs';
import { openExercise } from '../core/run/exercise';
import { replayRun } from '../core/run/replay';
import { outlookOf } from '../core/technique/outlook';
import { WALKERS } from '../core/walkers/catalogue';
import { steady } from '../core/walkers/steady';
import { OTHER_HANDS } from '../core/walkers/validityHands';
import { careless, startedClose, tagAfloat } from '../core/walkers/validityLuck';
import { runScores, type StudyRow, studyExercise, studyWalk, studyWalks } from '../core/walkers/validityRun';
import type { InvarianceRow } from '../core/walkers/validityTables';
import { turnedEvidence } from '../core/walkers/validityTurned';
import { scenarioOf } from './inputs';

/** One piece of the study: everything about one exercise of one point. */
export type Job =
  | { readonly kind: 'walks' | 'finds' | 'careless' | 'afloat' | 'invariance'; readonly index: number }
  | { readonly kind: 'shared'; readonly file: string };

export type JobResult = { readonly rows: readonly StudyRow[]; readonly changes: readonly InvarianceRow[] };

export const jobKey = (job: Job): string => (job.kind === 'shared' ? `shared ${job.file}` : `${job.kind} ${job.index}`);

/** The steady walker was made on the exercises before this number; the study asks it others. */
const STUDY_FROM = 1_000;
/** Finds beside those of the matrix have numbers of their own, so that a larger study takes over all of a smaller one. */
const FINDS_FROM = 5_000;
/** Exercises of luck and invariance are others than those of the matrix. */
const LUCK_FROM = 10_000;
const TURNED_DEG = 37;
const MOST_GROUNDS = 15;

/**
 * Sizes for N exercises in the matrix. N = 50 is the full study: 200 finds, 60 exercises for reliability, 200 forced cases of each
 * kind: of 50, two more or less decide whether 95 % were right, and the interval of the share is 14 points wide.
 * A study that is broken off says most if finds and forced cases come first.
 */
export function jobsFor(exercises: number, sharedFolder: string): readonly Job[] {
  const many = (kind: Exclude<Job['kind'], 'shared'>, count: number, from: number): Job[] =>
    Array.from({ length: count }, (_, i) => ({ kind, index: from + i }));
  const graded = Math.ceil(1.2 * exercises);
  return [
    ...sharedFiles(sharedFolder).map((file): Job => ({ kind: 'shared', file })),
    ...many('finds', 4 * exercises - graded, FINDS_FROM),
    ...many('afloat', 4 * exercises, LUCK_FROM),
    ...many('careless', 4 * exercises, LUCK_FROM),
    ...many('walks', graded, STUDY_FROM),
    ...many('invariance', Math.ceil(exercises / 5), LUCK_FROM),
  ];
}

const sharedFiles = (folder: string): readonly string[] =>
  (existsSync(folder) ? readdirSync(folder) : [])
    .filter((name) => name.endsWith('.json') && !name.endsWith('.schema.json'))
    .sort()
    .map((name) => `${folder}/${name}`);

export function doJob(job: Job): JobResult {
  const rows = (list: readonly StudyRow[]): JobResult => ({ rows: list, changes: [] });
  switch (job.kind) {
    case 'walks':
      return rows(studyWalks(job.index, WALKERS));
    case 'finds':
      return rows(studyWalks(job.index, [steady]));
    case 'shared':
      return rows([studyWalk(openExercise(scenarioOf(job.file)), steady, 1).row]);
    case 'careless': {
      const scenario = startedClose(studyExercise(job.index));
      return rows(scenario ? [studyWalk(openExercise(scenario), careless, 1).row] : []);
    }
    case 'afloat': {
      const scenario = firstAfloat(job.index);
      return rows(scenario ? [studyWalk(openExercise(scenario), steady, 1).row] : []);
    }
    case 'invariance':
      return { rows: [], changes: changesOf(job.index) };
  }
}

/** Not every ground has room for a lake: others are drawn until one has. */
function firstAfloat(index: number): ReturnType<typeof tagAfloat> {
  for (let draw = 0; draw < MOST_GROUNDS; draw++) {
    const scenario = tagAfloat(studyExercise(index + 1_000 * draw));
    if (scenario) return scenario;
  }
  return null;
}

/** The same walk by other hands, and turned with its ground. */
function changesOf(index: number): readonly InvarianceRow[] {
  const exercise = openExercise(studyExercise(index));
  const { run, row } = studyWalk(exercise, steady, 1);
  const outlook = outlookOf(exercise.world);
  const before = runScores({ exercise, run }, outlook);
  const turned = turnedEvidence({ exercise, run }, TURNED_DEG);
  const hands = OTHER_HANDS.map(({ id, logOf }) => {
    const again = replayRun(exercise, logOf(run, exercise), run.state.tick, run.listener);
    return { exercise: row.exercise, change: id, before, after: runScores({ exercise, run: again }, outlook) };
  });
  return [
    { exercise: row.exercise, change: `turned by ${TURNED_DEG} degrees`, before, after: runScores(turned.evidence, turned.outlook) },
    ...hands,
  ];
}
