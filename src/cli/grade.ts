import { type Exercise, openExercise } from '../core/run/exercise';
import { recordingFrom } from '../core/run/record';
import type { Scenario } from '../core/scenario/schema';
import { digestOf } from '../core/scenario/seal';
import { gradeRun } from '../core/technique/grade';
import { HABIT_IDS } from '../core/technique/habit';
import { documentsOf } from './documents';
import { textOf } from './inputs';

const tenth = (score: number | null): number | null => (score === null ? null : Math.round(score * 10) / 10);

/** Runs of one exercise come together: its ground and its waves are kept until another one comes. */
let open: Exercise | undefined;

function exerciseOf(scenario: Scenario): Exercise {
  if (open?.digest !== digestOf(scenario)) open = openExercise(scenario);
  return open;
}

/** The grade of one run as the contract has it. */
export function gradeValue(name: string, value: unknown): object {
  const recording = recordingFrom(name, value);
  const grade = gradeRun(exerciseOf(recording.scenario), recording);
  const habits = Object.fromEntries(
    HABIT_IDS.map((id) => {
      const { score, components, moments, whyNotShown } = grade.habits[id];
      const parts = Object.fromEntries(Object.entries(components).map(([part, mark]) => [part, tenth(mark)]));
      return [id, { score: tenth(score), components: parts, moments, ...(score === null ? { whyNotShown } : {}) }];
    }),
  );
  return {
    scenario: recording.scenario.title,
    name: recording.name,
    found: grade.outcome.found,
    technique: tenth(grade.technique),
    outcome: grade.outcome,
    habits,
    aided: recording.aided,
    replayMatches: grade.replayMatches,
  };
}

/** Every run of the files in turn; `emit` is called line by line for newline-delimited input. */
export function gradeCommand(
  files: readonly string[],
  emit: (line: object) => void,
): { readonly lines: boolean; readonly grades: readonly object[] } {
  const grades: object[] = [];
  let lined = false;
  for (const file of files) {
    const { lines, documents } = documentsOf(file, textOf(file));
    lined ||= lines;
    for (const { name, value } of documents) {
      const grade = gradeValue(name, value);
      if (lines) emit(grade);
      else grades.push(grade);
    }
  }
  return { lines: lined, grades };
}
