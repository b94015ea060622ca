import { TICKS_PER_S } from '../run/state';
import type { Evidence } from '../technique/habit';
import { listenedPulses } from '../technique/tunedTag';
import { turnDeg } from '../units/angles';

/** A run in columns, one row a pulse of the tag that was listened to: what the charts and tables of the debrief draw. */
export type Timeline = {
  readonly timeS: readonly number[];
  readonly tag: readonly number[];
  /** Gain less attenuation in use, dB. */
  readonly netGainDb: readonly number[];
  /** Least gain, dB; `null` where no setting of the receiver hears the pulse. */
  readonly leastGainDb: readonly (number | null)[];
  /** Gain in use above least gain, dB. */
  readonly excessDb: readonly (number | null)[];
  /** Above this listener's threshold, dB; negative is not heard, as a rule. */
  readonly loudnessDb: readonly number[];
  readonly audible: readonly boolean[];
  readonly flatOut: readonly boolean[];
  readonly headingDeg: readonly number[];
  /** Where the tag was, and where its waves were loudest together. */
  readonly trueBearingDeg: readonly number[];
  readonly loudestDeg: readonly number[];
  readonly distanceM: readonly number[];
  readonly eM: readonly number[];
  readonly nM: readonly number[];
};

export function timelineOf(evidence: Evidence): Timeline {
  const { states } = evidence.run;
  const rows = listenedPulses(evidence).map(({ pulse }) => {
    const tick = Math.min(states.length - 1, Math.floor(pulse.heard.atS * TICKS_PER_S + 1e-6));
    // The knobs of the tick's end: an action of the tick is done before the pulse of it is worked out.
    const acted = states[Math.min(states.length - 1, tick + 1)]!;
    return { ...pulse, acted };
  });
  return {
    timeS: rows.map(({ heard }) => heard.atS),
    tag: rows.map(({ truth }) => truth.tag),
    netGainDb: rows.map(({ acted: { controls } }) => controls.gainDb - controls.attenuatorDb),
    leastGainDb: rows.map(({ truth }) => truth.leastGainDb),
    excessDb: rows.map(({ truth }) => truth.excessDb),
    loudnessDb: rows.map(({ heard }) => heard.loudnessDb),
    audible: rows.map(({ heard }) => heard.audible),
    flatOut: rows.map(({ heard }) => heard.flatOut),
    headingDeg: rows.map(({ acted }) => acted.hold.headingDeg),
    trueBearingDeg: rows.map(({ truth }) => truth.trueBearingDeg),
    loudestDeg: rows.map(({ truth }) => truth.bestHeadingDeg),
    distanceM: rows.map(({ truth }) => truth.distanceM),
    eM: rows.map(({ acted }) => acted.at.eM),
    nM: rows.map(({ acted }) => acted.at.nM),
  };
}

/** The row of the last pulse at or before a time; -1 before the first. */
export function rowAt({ timeS }: Pick<Timeline, 'timeS'>, atS: number): number {
  let [low, high] = [0, timeS.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (timeS[middle]! <= atS + 1e-6) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** Headings as turns from the direction of the tag, clockwise positive, degrees in (-180, 180]. */
export const offTheTag = (headingsDeg: readonly number[], trueDeg: readonly number[]): readonly number[] =>
  headingsDeg.map((deg, i) => turnDeg(trueDeg[i]!, deg));
