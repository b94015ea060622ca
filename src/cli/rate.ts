import { type Exercise, openExercise } from '../core/run/exercise';
import { timeS } from '../core/run/state';
import { tagAt } from '../core/run/tagMotion';
import { turnDeg } from '../core/units/angles';
import { bearingDeg } from '../core/units/frames';
import { playWalker } from '../core/walkers/play';
import { steady } from '../core/walkers/steady';
import { boundS } from '../core/walkers/validityRun';
import { numberFrom, scenarioOf, UsageError } from './inputs';

const USUAL_WALKS = 3;
/** A bearing off by more misleads. */
const MISLEADS_DEG = 15;

export type Rating = {
  readonly file: string;
  readonly title: string;
  readonly walks: number;
  readonly foundShare: number;
  readonly inTimeShare: number;
  readonly medianTimeS: number | null;
  readonly boundS: number;
  readonly bearings: number;
  readonly medianErrorDeg: number | null;
  readonly misleadingShare: number | null;
};

/** How hard each scenario is, by rehearsal: walks of the steady walker with other draws of its ear. */
export function rateCommand(files: readonly string[], options: { readonly walks?: unknown }): readonly Rating[] {
  const walks = options.walks === undefined ? USUAL_WALKS : numberFrom('walks', options.walks, 1, 100);
  if (!Number.isInteger(walks)) throw new UsageError(`--walks wants a whole number, found ${walks}`);
  return files.map((file) => ratingOf(file, openExercise(scenarioOf(file)), walks));
}

function ratingOf(file: string, exercise: Exercise, walks: number): Rating {
  const within = boundS(exercise);
  const states = Array.from({ length: walks }, (_, i) => playWalker(exercise, steady, i + 1).state);
  const times = states.filter(({ ending }) => ending === 'found').map(timeS);
  const errors = states.flatMap(({ notebook }) =>
    notebook.map(({ at, bearingDeg: taken, atTick }) => Math.abs(turnDeg(bearingDeg(at, tagAt(exercise.scenario, 0, atTick / 20)), taken))),
  );
  const tenth = (value: number | null) => (value === null ? null : Math.round(value * 10) / 10);
  return {
    file,
    title: exercise.scenario.title,
    walks,
    foundShare: times.length / walks,
    inTimeShare: times.filter((s) => s <= within).length / walks,
    medianTimeS: tenth(medianOf(times)),
    boundS: Math.round(within),
    bearings: errors.length,
    medianErrorDeg: tenth(medianOf(errors)),
    misleadingShare:
      errors.length === 0 ? null : Math.round((100 * errors.filter((deg) => deg > MISLEADS_DEG).length) / errors.length) / 100,
  };
}

/** The lower of the two middle ones of an even number; `null` for none. */
function medianOf(values: readonly number[]): number | null {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor((sorted.length - 1) / 2)] ?? null;
}
