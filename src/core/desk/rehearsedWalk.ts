import { ARROW_KINDS, type ArrowKind, waveArrows } from '../debrief/lossBudget';
import type { Exercise } from '../run/exercise';
import { type Ending, type Mark, type RunState, TICKS_PER_S, timeS } from '../run/state';
import { tagAt } from '../run/tagMotion';
import { soughtTag } from '../run/task';
import { turnDeg } from '../units/angles';
import { toPowerRatio } from '../units/decibels';
import { bearingDeg, type MapPoint } from '../units/frames';
import { playWalker } from '../walkers/play';
import { steady } from '../walkers/steady';
import { pointOver } from '../world/height';
import { lineOfSight } from '../world/lineOfSight';

/** A bearing of a rehearsal against the truth. */
export type RehearsedBearing = {
  readonly at: MapPoint;
  /** Taken less true, degrees clockwise, in (-180, 180]. */
  readonly errorDeg: number;
  /** The kind of wave that brought the most power there. */
  readonly by: ArrowKind;
  /** That kind and those that are nearly as strong. */
  readonly strong: readonly ArrowKind[];
  readonly inSight: boolean;
};

/** One walk of the steady walker, as far as a verdict needs it: plain data. */
export type RehearsedWalk = {
  readonly seed: number;
  readonly ending: Ending;
  readonly timeS: number;
  readonly walkedM: number;
  readonly bearings: readonly RehearsedBearing[];
};

const CHEST_M = 1.7;
/** A wave this much under the strongest still turns the loudest side. */
const NEARLY_DB = 6;

/** Lets the steady walker do the exercise once, with the draws of its ear by `seed`. `told` hears of every tick. */
export function rehearsedWalk(exercise: Exercise, seed: number, told: (state: RunState) => void = () => {}): RehearsedWalk {
  const { state } = playWalker(exercise, steady, seed, undefined, told);
  return {
    seed,
    ending: state.ending!,
    timeS: timeS(state),
    walkedM: state.walkedM,
    bearings: state.notebook.map((mark) => againstTruth(exercise, mark)),
  };
}

function againstTruth(exercise: Exercise, { at, atTick, bearingDeg: takenDeg }: Mark): RehearsedBearing {
  const { scenario, world } = exercise;
  const atS = atTick / TICKS_PER_S;
  const sought = soughtTag(scenario);
  const tag = tagAt(scenario, sought, atS);
  const strong = strongKinds(exercise, at, atS);
  return {
    at,
    errorDeg: turnDeg(bearingDeg(at, tag), takenDeg),
    by: strong[0]!,
    strong,
    inSight: lineOfSight(world, pointOver(world, at, CHEST_M), pointOver(world, tag, scenario.tags[sought]!.heightM)).clear,
  };
}

/** The kinds of waves that bring most power to a place, strongest first. Waves of a kind come from several sides: their powers are added. */
function strongKinds(exercise: Exercise, at: MapPoint, atS: number): readonly ArrowKind[] {
  const ratios = new Map<ArrowKind, number>();
  for (const { kind, powerDbm } of waveArrows(exercise, soughtTag(exercise.scenario), at, CHEST_M, atS)) {
    ratios.set(kind, (ratios.get(kind) ?? 0) + toPowerRatio(powerDbm));
  }
  const ratio = (kind: ArrowKind) => ratios.get(kind) ?? 0;
  const least = Math.max(...ratios.values()) * toPowerRatio(-NEARLY_DB);
  return ARROW_KINDS.filter((kind) => ratio(kind) >= least).sort((a, b) => ratio(b) - ratio(a));
}
