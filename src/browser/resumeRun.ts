import type { Exercise } from '../core/run/exercise';
import { beginLive } from '../core/run/live';
import { type Silence, silencesAmong } from '../core/run/silence';
import { TICKS_PER_S } from '../core/run/state';
import { advance, step } from '../core/run/step';
import { type CheckBeep, checkBeepsAmong } from '../core/run/tagCheck';
import type { MapPoint } from '../core/units/frames';
import type { Come } from './currentRun';
import type { StoredRun } from './storage/runs';

/** A kept run at the tick where it was left: actions and time are lived through again, the pulses were kept. */
export function resumed(exercise: Exercise, kept: StoredRun): Come {
  const { scenario, world } = exercise;
  const begun = beginLive(exercise, { thresholdDb: kept.thresholdDb });
  let state = begun.state;
  const walked: MapPoint[] = [state.at];
  const silences: Silence[] = [];
  const checkBeeps: CheckBeep[] = [];
  let [next, nextPulse] = [0, 0];
  while (state.tick < kept.tick && state.ending === null) {
    for (; kept.pulses[nextPulse] && tickOf(kept.pulses[nextPulse]!) <= state.tick; nextPulse++) {
      const begunNow = [kept.pulses[nextPulse]!];
      silences.push(...silencesAmong(scenario, state, begunNow));
      checkBeeps.push(...checkBeepsAmong(state, begunNow));
    }
    for (; next < kept.log.length && kept.log[next]!.tick <= state.tick; next++) state = step(scenario, state, kept.log[next]!.action);
    state = advance(scenario, world, state);
    const last = walked.at(-1)!;
    if (Math.hypot(state.at.eM - last.eM, state.at.nM - last.nM) >= 2) walked.push(state.at);
  }
  // What was done while the run rested stands after its last tick.
  for (; next < kept.log.length; next++) state = step(scenario, state, kept.log[next]!.action);
  return { live: { ...begun, state: { ...state, spinDegPerS: 0 }, log: kept.log, pulses: kept.pulses }, walked, silences, checkBeeps };
}

const tickOf = ({ heard }: StoredRun['pulses'][number]): number => Math.floor(heard.atS * TICKS_PER_S + 1e-6);
