import type { ArrowKind } from '../core/debrief/lossBudget';
import { medianOf } from '../core/desk/median';
import { misleadingPlaces, misleads } from '../core/desk/misleads';
import { rehearsedWalk } from '../core/desk/rehearsedWalk';
import { type Exercise, openExercise } from '../core/run/exercise';
import { isDone } from '../core/run/state';
import { boundS } from '../core/walkers/validityRun';
import { numberFrom, scenarioOf, UsageError } from './inputs';

const USUAL_WALKS = 3;

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
  /** Where most bearings were misled, worst first: the middle error there and the wave behind most of them. */
  readonly misleading: readonly {
    readonly at: readonly [eM: number, nM: number];
    readonly bearings: number;
    readonly offDeg: number;
    readonly by: ArrowKind;
  }[];
};

const MOST_PLACES = 3;

/** How hard each scenario is, by rehearsal: walks of the steady walker with other draws of its ear. */
export function rateCommand(files: readonly string[], options: { readonly walks?: unknown }): readonly Rating[] {
  const walks = options.walks === undefined ? USUAL_WALKS : numberFrom('walks', options.walks, 1, 100);
  if (!Number.isInteger(walks)) throw new UsageError(`--walks wants a whole number, found ${walks}`);
  return files.map((file) => ratingOf(file, openExercise(scenarioOf(file)), walks));
}

function ratingOf(file: string, exercise: Exercise, walks: number): Rating {
  const within = boundS(exercise);
  const walked = Array.from({ length: walks }, (_, i) => rehearsedWalk(exercise, i + 1));
  const times = walked.filter(({ ending }) => isDone(ending)).map(({ timeS }) => timeS);
  const bearings = walked.flatMap((walk) => walk.bearings);
  const tenth = (value: number | null) => (value === null ? null : Math.round(value * 10) / 10);
  return {
    file,
    title: exercise.scenario.title,
    walks,
    foundShare: times.length / walks,
    inTimeShare: times.filter((s) => s <= within).length / walks,
    medianTimeS: tenth(medianOf(times)),
    boundS: Math.round(within),
    bearings: bearings.length,
    medianErrorDeg: tenth(medianOf(bearings.map(({ errorDeg }) => Math.abs(errorDeg)))),
    misleadingShare: bearings.length === 0 ? null : Math.round((100 * bearings.filter(misleads).length) / bearings.length) / 100,
    misleading: misleadingPlaces(walked)
      .slice(0, MOST_PLACES)
      .map(({ at, offDeg, ...place }) => ({ ...place, at: [at.eM, at.nM] as const, offDeg: Math.round(offDeg) })),
  };
}
