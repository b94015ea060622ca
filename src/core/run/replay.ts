import type { Listener } from '../ear/loudness';
import type { Entry } from './actions';
import type { Exercise } from './exercise';
import { beginLive, type Live, tickOnce } from './live';
import type { RunState } from './state';

/** A run lived through again: its end, and its state at every tick, `states[k].tick === k`. */
export type Replay = Live & { readonly states: readonly RunState[] };

/** Does the logged actions again, tick by tick, up to `ticks` or the run's own end; `told` hears of every tick. */
export function replayRun(
  exercise: Exercise,
  log: readonly Entry[],
  ticks: number,
  listener: Listener,
  told: (state: RunState) => void = () => {},
): Replay {
  const states: RunState[] = [];
  let live = beginLive(exercise, listener);
  states.push(live.state);
  let next = 0;
  while (live.state.ending === null && (live.state.tick < ticks || next < log.length)) {
    const { tick } = live.state;
    const actions = [];
    for (; next < log.length && log[next]!.tick <= tick; next++) actions.push(log[next]!.action);
    live = tickOnce(exercise, live, actions);
    states[live.state.tick] = live.state;
    told(live.state);
  }
  return { ...live, states };
}
