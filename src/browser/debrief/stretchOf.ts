import { begin } from '../../core/run/begin';
import type { Exercise } from '../../core/run/exercise';
import type { Live } from '../../core/run/live';
import { TICKS_PER_S } from '../../core/run/state';
import { advance, step } from '../../core/run/step';
import type { Moment } from '../../core/technique/habit';
import type { MapPoint } from '../../core/units/frames';

/** The places of a moment, half a second apart. */
export function stretchOf({ scenario, world }: Exercise, { log, state: end }: Live, moment: Moment | null): readonly MapPoint[] {
  if (!moment) return [];
  const places: MapPoint[] = [];
  let state = begin(scenario);
  let next = 0;
  while (state.tick <= Math.min(end.tick, moment.toS * TICKS_PER_S) && state.ending === null) {
    for (; next < log.length && log[next]!.tick <= state.tick; next++) state = step(scenario, state, log[next]!.action);
    if (state.tick >= moment.fromS * TICKS_PER_S && state.tick % 10 === 0) places.push(state.at);
    state = advance(scenario, world, state);
  }
  return places;
}
