import type { Exercise } from '../run/exercise';
import { entriesOf, PROGRAM_VERSION, type Recording } from '../run/record';
import { type Replay, replayRun } from '../run/replay';
import type { Scenario } from '../scenario/schema';
import { digestOf } from '../scenario/seal';
import { type Grade, gradeReplay, resultOf } from '../technique/grade';
import { checkRun } from './checkRun';
import type { Advice, RunHabitId, TableExercise, TableRow } from './tableRow';
import { trackOf } from './track';

const RUN_HABIT_IDS: readonly RunHabitId[] = ['quietGain', 'setThenSweep', 'walkAndListen', 'clearView'];

/** Replays a run, checks it and grades it: its line in the table. */
export function rowOf(exercise: Exercise, recording: Recording): TableRow {
  const run = replayRun(exercise, entriesOf(recording), recording.ticks, { thresholdDb: recording.listener.thresholdDb });
  return rowOfReplay(exercise, recording, run);
}

/** The same for a run that was lived through already. */
export function rowOfReplay(exercise: Exercise, recording: Recording, run: Replay): TableRow {
  const grade = gradeReplay({ exercise, run }, recording);
  const result = resultOf(grade);
  const check = checkRun(recording, run, result);
  const { quietGain, setThenSweep, walkAndListen, clearView } = result;
  const nothing = { quietGain: null, setThenSweep: null, walkAndListen: null, clearView: null };
  return {
    run: digestOf({ digest: recording.digest, ticks: recording.ticks, listener: recording.listener.thresholdDb, log: recording.log }),
    name: recording.name,
    by: recording.by,
    exercise: recording.digest,
    ...check,
    aided: recording.aided,
    ...(run.state.interventions.length > 0 ? { withInstructor: true } : {}),
    program: recording.program,
    gradedBy: PROGRAM_VERSION,
    begunAt: recording.begunAt ?? null,
    technique: check.sound ? result.technique : null,
    habits: check.sound ? { quietGain, setThenSweep, walkAndListen, clearView } : nothing,
    practice: recording.practice ?? null,
    outcome: check.sound ? grade.outcome : null,
    advice: check.sound ? adviceOf(grade.habits) : [],
    track: check.sound ? trackOf(run.states) : [],
  };
}

const adviceOf = (habits: Grade['habits']): readonly Advice[] =>
  RUN_HABIT_IDS.flatMap((habit) => {
    const costly = habits[habit].moments.filter(({ good }) => !good).sort((a, b) => b.weight - a.weight);
    return costly.slice(0, 1).map(({ next, weight }) => ({ habit, next, weight: Math.round(weight * 10) / 10 }));
  });

/** What the table keeps of an exercise. */
export function tableExerciseOf(scenario: Scenario, digest: string): TableExercise {
  const { title, lesson, level, seed, ground, limits, start, tags } = scenario;
  return {
    digest,
    title,
    lesson,
    level,
    sizeM: ground.sizeM,
    seed,
    timeS: limits.timeS,
    findWithinM: limits.findWithinM,
    startAt: start.at,
    tags: tags.map(({ name, at }) => ({ name, at })),
  };
}
