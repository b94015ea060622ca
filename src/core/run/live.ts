import { type Listener, USUAL_LISTENER } from '../ear/loudness';
import type { Action, Entry } from './actions';
import { begin } from './begin';
import type { Exercise } from './exercise';
import { type Pulse, pulseNow } from './pulse';
import type { RunState } from './state';
import { advance, step } from './step';
import { pulsesDue } from './timetable';

/** A run so far: where it stands, what was done, every pulse. */
export type Live = {
  readonly state: RunState;
  readonly log: readonly Entry[];
  readonly pulses: readonly Pulse[];
  readonly listener: Listener;
};

export const beginLive = (exercise: Exercise, listener: Listener = USUAL_LISTENER): Live => ({
  state: begin(exercise.scenario),
  log: [],
  pulses: [],
  listener,
});

/** Actions that are done while the run rests: no time passes. At the next tick they stand before what that tick brings. */
export function actedAtRest(exercise: Exercise, live: Live, actions: readonly Action[]): Live {
  if (live.state.ending !== null) return live;
  const state = actions.reduce((before, action) => step(exercise.scenario, before, action), live.state);
  return { ...live, state, log: [...live.log, ...actions.map((action) => ({ tick: live.state.tick, action }))] };
}

/** The one loop of person, walker, replay and test: actions of this tick, pulses that begin in it, then time goes on. */
export function tickOnce(exercise: Exercise, live: Live, actions: readonly Action[]): Live {
  if (live.state.ending !== null) return live;
  const { scenario, world } = exercise;
  const { tick } = live.state;
  const acted = actions.reduce((state, action) => step(scenario, state, action), live.state);
  const due = acted.ending === null ? pulsesDue(scenario, tick) : [];
  const pulses = due.map((pulse) => pulseNow(exercise, acted, pulse, live.listener));
  return {
    state: advance(scenario, world, acted),
    log: actions.length === 0 ? live.log : [...live.log, ...actions.map((action) => ({ tick, action }))],
    pulses: pulses.length === 0 ? live.pulses : [...live.pulses, ...pulses],
    listener: live.listener,
  };
}
