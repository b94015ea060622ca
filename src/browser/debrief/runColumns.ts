import type { Pulse } from '../../core/run/pulse';
import { type RunState, TICKS_PER_S } from '../../core/run/state';

/** A run in columns, one row a pulse: what the charts and the table draw. */
export type RunColumns = {
  readonly timeS: readonly number[];
  /** Gain less attenuation in use, dB. */
  readonly netGainDb: readonly number[];
  /** Least gain, dB; `null` where no setting of the receiver hears the pulse. */
  readonly leastGainDb: readonly (number | null)[];
  readonly distanceM: readonly number[];
  readonly audible: readonly boolean[];
  readonly headingDeg: readonly number[];
};

/** Rows for the nearest tag's pulses alone where there are several: the lines would cross for no reason of the learner's. */
export function runColumns(pulses: readonly Pulse[], states: readonly RunState[]): RunColumns {
  const tag = pulses.at(-1)?.truth.tag ?? 0;
  const rows = pulses.filter(({ truth }) => truth.tag === tag);
  const stateAt = (atS: number) => states[Math.min(states.length - 1, Math.floor(atS * TICKS_PER_S))];
  return {
    timeS: rows.map(({ heard }) => heard.atS),
    netGainDb: rows.map(({ heard }) => {
      const controls = stateAt(heard.atS)?.controls;
      return controls ? controls.gainDb - controls.attenuatorDb : 0;
    }),
    leastGainDb: rows.map(({ truth }) => truth.leastGainDb),
    distanceM: rows.map(({ truth }) => truth.distanceM),
    audible: rows.map(({ heard }) => heard.audible),
    headingDeg: rows.map(({ heard }) => stateAt(heard.atS)?.hold.headingDeg ?? 0),
  };
}
