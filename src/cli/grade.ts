import { type Exercise, openExercise } from '../core/run/exercise';
import { recordingFrom } from '../core/run/record';
import { type Fault, InputFaults } from '../core/scenario/faults';
import type { Scenario } from '../core/scenario/schema';
import { digestOf } from '../core/scenario/seal';
import { gradeRun } from '../core/technique/grade';
import { HABIT_IDS } from '../core/technique/habit';
import { type Document, documentsOf, lineByLine } from './documents';
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

type Graded = { readonly lines: boolean; readonly grades: readonly object[]; readonly faults: readonly Fault[] };

/**
 * Every run of the files in turn; `emit` is called line by line for newline-delimited input, which `asLines` says it is even where a share of
 * a pile has only one line. There a line that is wrong is answered by its faults, so that answers and lines stay side by side.
 * @throws InputFaults for a file that is not a pile and is wrong
 */
export function gradeCommand(files: readonly string[], asLines: boolean, emit: (line: object) => void): Graded {
  const grades: object[] = [];
  const faults: Fault[] = [];
  let lined = asLines;
  for (const file of files) {
    const text = textOf(file);
    const { lines, documents } = asLines ? { lines: true, documents: lineByLine(file, text) } : documentsOf(file, text);
    lined ||= lines;
    for (const document of documents) {
      if (!lines) grades.push(gradeOf(document as Document));
      else {
        const line = gradeOrFaults(document);
        if (isFaulty(line)) faults.push(...line.faults);
        emit(line);
      }
    }
  }
  return { lines: lined, grades, faults };
}

const gradeOf = ({ name, value }: Document): object => gradeValue(name, value);
const isFaulty = (line: object): line is { readonly faults: readonly Fault[] } => 'faults' in line;

function gradeOrFaults(document: Document | Fault): object {
  if (!('value' in document)) return { faults: [document] };
  try {
    return gradeOf(document);
  } catch (error) {
    if (error instanceof InputFaults) return { faults: error.faults };
    throw error;
  }
}
