import type { Exercise } from '../core/run/exercise';
import { beginLive, type Live } from '../core/run/live';
import { advance, step } from '../core/run/step';
import type { MapPoint } from '../core/units/frames';
import type { StoredRun } from './storage/runs';

/** A kept run at the tick where it was left: actions and time are lived through again, the pulses were kept. */
export function resumed(exercise: Exercise, kept: StoredRun): { readonly live: Live; readonly walked: readonly MapPoint[] } {
  const { scenario, world } = exercise;
  const begun = beginLive(exercise, { thresholdDb: kept.thresholdDb });
  let state = begun.state;
  const walked: MapPoint[] = [state.at];
  let next = 0;
  while (state.tick < kept.tick && state.ending === null) {
    for (; next < kept.log.length && kept.log[next]!.tick <= state.tick; next++) state = step(scenario, state, kept.log[next]!.action);
    state = advance(scenario, world, state);
    const last = walked.at(-1)!;
    if (Math.hypot(state.at.eM - last.eM, state.at.nM - last.nM) >= 2) walked.push(state.at);
  }
  return { live: { ...begun, state: { ...state, spinDegPerS: 0 }, log: kept.log, pulses: kept.pulses }, walked };
}
