import type { Exercise } from '../run/exercise';
import { entriesOf, heardMatches, type Recording, type RunResult } from '../run/record';
import { type Replay, replayRun } from '../run/replay';
import { onFootM, timeS } from '../run/state';
import { tagAt } from '../run/tagMotion';
import { namedTag, taskOf } from '../run/task';
import { turnDeg } from '../units/angles';
import { bearingDeg, distanceM } from '../units/frames';
import { clearView } from './clearView';
import { type FixOutcome, fixOutcomeOf } from './fixOutcome';
import { type Evidence, type Habit, type HabitId, type HabitResult, weightedMean } from './habit';
import { judgePractice } from './keepPractising';
import { quietGain } from './quietGain';
import { setThenSweep } from './setThenSweep';
import { tunedTag } from './tunedTag';
import { walkAndListen } from './walkAndListen';

/** The habits of a single run, in the order they are shown; the fifth comes from the logbook. */
export const RUN_HABITS: readonly Habit[] = [quietGain, setThenSweep, walkAndListen, clearView];

/** Fewer shown habits than this and the run is not ranked. */
const LEAST_SHOWN = 3;

/** What came of it, reported beside the grade and never inside it. */
export type Outcome = {
  readonly found: boolean;
  readonly ending: string | null;
  readonly timeS: number;
  readonly walkedM: number;
  /** Metres gone in the vehicle; left out where none were. */
  readonly drivenM?: number | undefined;
  readonly declarations: number;
  /** Declarations at another tag than the one asked for; left out where there were none. */
  readonly atOtherTag?: number | undefined;
  /** The fix that was declared against the truth, where the task is one; left out where the task is a find. */
  readonly fix?: FixOutcome | null | undefined;
  /** Median error of the marked bearings that stand, degrees; `null` without any. */
  readonly bearingErrorDeg: number | null;
  /** Median distance between where one believed to stand and where one stood, at the bearings that stand; left out where the map shows it. */
  readonly placeErrorM?: number | undefined;
  /** Distance of the guess pin from the tag, metres; `null` without one. */
  readonly guessErrorM: number | null;
};

export type Grade = {
  /** Weighted mean of the shown habits 1 to 4; `null` where fewer than three are shown. */
  readonly technique: number | null;
  readonly outcome: Outcome;
  readonly habits: Readonly<Record<HabitId, HabitResult>>;
  readonly replayMatches: boolean;
};

/** Replays a recording and grades it. */
export function gradeRun(exercise: Exercise, recording: Recording): Grade {
  const run = replayRun(exercise, entriesOf(recording), recording.ticks, { thresholdDb: recording.listener.thresholdDb });
  return { ...gradeReplay({ exercise, run }, recording), replayMatches: heardMatches(recording, run) };
}

/** The grade of a run that was replayed already. */
export function gradeReplay(evidence: Evidence, recording: Pick<Recording, 'practice'>): Omit<Grade, 'replayMatches'> {
  const { weights } = evidence.exercise.scenario;
  const results = Object.fromEntries(RUN_HABITS.map((habit) => [habit.id, habit.judge(evidence)])) as Record<
    keyof typeof weights,
    HabitResult
  >;
  const parts = (Object.keys(weights) as (keyof typeof weights)[]).map((id) => ({ score: results[id].score, weight: weights[id] }));
  const shown = parts.filter(({ score }) => score !== null).length;
  return {
    technique: shown >= LEAST_SHOWN ? weightedMean(parts) : null,
    outcome: outcomeOf(evidence, evidence.run),
    habits: { ...results, keepPractising: judgePractice(recording.practice) },
  };
}

const tenth = (score: number | null): number | null => (score === null ? null : Math.round(score * 10) / 10);

/** A grade as a run file carries it. */
export function resultOf({ technique, habits, outcome }: Pick<Grade, 'technique' | 'habits' | 'outcome'>): RunResult {
  const { quietGain, setThenSweep, walkAndListen, clearView } = habits;
  return {
    technique: tenth(technique),
    quietGain: tenth(quietGain.score),
    setThenSweep: tenth(setThenSweep.score),
    walkAndListen: tenth(walkAndListen.score),
    clearView: tenth(clearView.score),
    found: outcome.found,
    timeS: outcome.timeS,
  };
}

function outcomeOf(evidence: Evidence, { state, states }: Replay): Outcome {
  const { scenario } = evidence.exercise;
  const errors = state.notebook
    .filter(({ struckOut }) => !struckOut)
    .map((mark) => {
      const then = tagAt(scenario, tunedTag(evidence, states[mark.atTick]!), mark.atTick / 20);
      return Math.abs(turnDeg(bearingDeg(mark.at, then), mark.bearingDeg));
    })
    .sort((a, b) => a - b);
  const lost = state.notebook
    .flatMap(({ struckOut, at, believedAt }) => (struckOut || !believedAt ? [] : [Math.round(distanceM(at, believedAt))]))
    .sort((a, b) => a - b);
  const placeErrorM = lost[Math.floor((lost.length - 1) / 2)];
  const last = tagAt(scenario, namedTag(taskOf(scenario)) ?? tunedTag(evidence, state), timeS(state));
  const fix = fixOutcomeOf(scenario, state);
  const atOtherTag = state.declarations.filter(({ otherTag }) => otherTag !== null).length;
  return {
    found: fix ? fix.offM !== null : state.ending === 'found',
    ending: state.ending,
    timeS: timeS(state),
    walkedM: Math.round(onFootM(state)),
    ...(state.drivenM > 0 ? { drivenM: Math.round(state.drivenM) } : {}),
    declarations: state.declarations.length,
    ...(fix === undefined ? {} : { fix }),
    ...(atOtherTag > 0 ? { atOtherTag } : {}),
    bearingErrorDeg: errors.length === 0 ? null : Math.round(errors[Math.floor((errors.length - 1) / 2)]! * 10) / 10,
    ...(placeErrorM === undefined ? {} : { placeErrorM }),
    guessErrorM: state.guess ? Math.round(distanceM(state.guess, last)) : null,
  };
}
