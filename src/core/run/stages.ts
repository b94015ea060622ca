import type { Scenario } from '../scenario/schema';
import { distanceM, type MapPoint } from '../units/frames';
import { onFootM, type RunState, TICKS_PER_S } from './state';
import { withoutVehicle } from './vehicle';

/** A text between two stages of an exercise, and what it waits for. */
export type StagePlan = NonNullable<Scenario['stages']>[number];

/** When a stage began, and what is counted from there. */
export type StageBegun = {
  readonly atTick: number;
  readonly walkedM: number;
  readonly drivenM: number;
  readonly bearings: number;
  readonly guess: MapPoint | null;
};

/** How far one has driven before getting out counts as having come by vehicle, metres. */
const DRIVEN_M = 20;

const begunAt = (state: RunState): StageBegun => ({
  atTick: state.tick,
  walkedM: onFootM(state),
  drivenM: state.drivenM,
  bearings: state.notebook.length,
  guess: state.guess,
});

/** Is what the next text waits for done? It is counted from the stage's beginning. */
function isDone({ after }: StagePlan, state: RunState, from: StageBegun): boolean {
  switch (after.kind) {
    case 'bearings':
      return state.notebook.slice(from.bearings).filter(({ struckOut }) => !struckOut).length >= after.count;
    case 'pin':
      return state.guess !== null && state.guess !== from.guess;
    case 'on-foot':
      return state.vehicle?.aboard === false && state.drivenM - from.drivenM >= DRIVEN_M;
    case 'reached':
      return distanceM(state.at, { eM: after.at[0], nM: after.at[1] }) <= after.withinM;
    case 'walked':
      return onFootM(state) - from.walkedM >= after.m;
    case 'time':
      return state.tick - from.atTick >= after.s * TICKS_PER_S;
  }
}

/** The state once every text that is due has come; one may be due at once after another. */
export function staged(scenario: Pick<Scenario, 'stages' | 'kit'>, state: RunState): RunState {
  const plan = scenario.stages?.[state.stages.length];
  if (!plan || state.ending !== null) return state;
  const from = state.stages.at(-1) ?? { atTick: 0, walkedM: 0, drivenM: 0, bearings: 0, guess: null };
  if (!isDone(plan, state, from)) return state;
  const begun = { ...state, stages: [...state.stages, begunAt(state)] };
  return staged(scenario, plan.vehicleGoes ? withoutVehicle(scenario, begun) : begun);
}

/** What is to be done now: the last text that came, or the brief. */
export const briefNow = ({ brief, stages }: Pick<Scenario, 'brief' | 'stages'>, state: Pick<RunState, 'stages'> | null): string =>
  stages?.[(state?.stages.length ?? 0) - 1]?.text ?? brief;
