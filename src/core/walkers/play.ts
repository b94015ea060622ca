import { type Listener, USUAL_LISTENER } from '../ear/loudness';
import { randomFor } from '../random/draw';
import type { Action } from '../run/actions';
import type { Exercise } from '../run/exercise';
import { beginLive, tickOnce } from '../run/live';
import type { Replay } from '../run/replay';
import type { RunState } from '../run/state';
import { type HeardHere, seenNow, type Walker } from './policy';

/**
 * Lets a walker do an exercise to its end; its state at every tick is kept as a replay keeps it. `seed` decides what the walker
 * draws, the same for every walker, never what the ground or the radio do. `told` hears of every tick.
 */
export function playWalker(
  exercise: Exercise,
  walker: Walker,
  seed: number,
  listener: Listener = USUAL_LISTENER,
  told: (state: RunState) => void = () => {},
): Replay {
  const random = randomFor(exercise.scenario.seed, 'walk', seed);
  let live = beginLive(exercise, listener);
  const states: RunState[] = [live.state];
  const policy = walker.play({ heard: [], seen: seenNow(exercise, live.state) }, random);
  let answer = policy.next({ heard: [], seen: seenNow(exercise, live.state) });
  while (live.state.ending === null) {
    const actions: readonly Action[] = answer.done ? [{ type: 'giveUp' }] : answer.value;
    const known = live.pulses.length;
    const before = live.state;
    live = tickOnce(exercise, live, actions);
    states.push(live.state);
    told(live.state);
    const heard = live.pulses.slice(known).map(
      (pulse): HeardHere => ({
        ...pulse.heard,
        at: before.at,
        headingDeg: live.state.hold.headingDeg,
        rollDeg: live.state.hold.rollDeg,
        netGainDb: live.state.controls.gainDb - live.state.controls.attenuatorDb,
      }),
    );
    if (!answer.done) answer = policy.next({ heard, seen: seenNow(exercise, live.state) });
  }
  return { ...live, states };
}
