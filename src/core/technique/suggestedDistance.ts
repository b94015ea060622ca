import { TICKS_PER_S } from '../run/state';
import { distanceFromLeastGainM, LAST_STRETCH_M } from './gainDistance';
import type { Evidence } from './habit';
import { listenedPulses } from './tunedTag';

/** Least gain is looked at over this long to either side, so that one fade of a few steps does not speak for a place. */
const AROUND_S = 10;

/** What least gain said of the distance, at any time of the run. */
export type SuggestedDistance = {
  /** Metres by the rule of thumb, median of the pulses around; `null` where no setting would make them heard, or none was due. */
  readonly atTickM: (tick: number) => number | null;
  /** Does least gain show a tag closer than the last 100 m? */
  readonly isClose: (tick: number) => boolean;
};

export function suggestedDistance(evidence: Evidence): SuggestedDistance {
  const { tags } = evidence.exercise.scenario;
  const known = listenedPulses(evidence).flatMap(({ pulse }) => {
    const { leastGainDb, tag } = pulse.truth;
    return leastGainDb === null ? [] : [{ atS: pulse.heard.atS, m: distanceFromLeastGainM(leastGainDb, tags[tag]!.eirpDbm) }];
  });
  const times = Float64Array.from(known, ({ atS }) => atS);
  const atTickM = (tick: number): number | null => {
    const nowS = tick / TICKS_PER_S;
    const around = known.slice(firstFrom(times, nowS - AROUND_S), firstFrom(times, nowS + AROUND_S + 1e-9)).map(({ m }) => m);
    return around.length === 0 ? null : around.sort((a, b) => a - b)[Math.floor((around.length - 1) / 2)]!;
  };
  const isClose = (tick: number): boolean => {
    const m = atTickM(tick);
    return m !== null && m < LAST_STRETCH_M;
  };
  return { atTickM, isClose };
}

/** Index of the first time at or after `fromS`. */
function firstFrom(times: Float64Array, fromS: number): number {
  let [low, high] = [0, times.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle]! < fromS) low = middle + 1;
    else high = middle;
  }
  return low;
}
