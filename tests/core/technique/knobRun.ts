import { begin } from '../../../src/core/run/begin';
import type { Pulse } from '../../../src/core/run/pulse';
import { type Mark, type RunState, TICKS_PER_S } from '../../../src/core/run/state';
import type { Evidence } from '../../../src/core/technique/habit';
import { wrapBearingDeg } from '../../../src/core/units/angles';
import { plainScenario } from '../world/fixtureScenario';
import { FLAT } from './handmadeRun';

/** Least gain everywhere in these runs, dB. */
export const LEAST_DB = 20;

export type Knobs = {
  readonly wait: (seconds: number) => void;
  /** Turns by an arc at a rate, in steps of `everyTicks` as an input device gives them. */
  readonly turn: (byDeg: number, rateDegPerS?: number, everyTicks?: number) => void;
  readonly gain: (gainDb: number) => void;
  readonly attenuator: (attenuatorDb: number) => void;
  readonly tuneBy: (hz: number) => void;
  readonly mark: () => void;
  readonly jumpTo: (eM: number, nM: number) => void;
};

/** A run of turning and setting only, `start` turned by `turnedDeg`; pulses each second, saturated 40 dB over least gain. */
export function knobRun(script: (knobs: Knobs) => void, turnedDeg = 0, leastDb: number | null = LEAST_DB): Evidence {
  const scenario = plainScenario();
  const first = begin(scenario);
  const states: RunState[] = [{ ...first, hold: { ...first.hold, headingDeg: wrapBearingDeg(turnedDeg) } }];
  const marks: Mark[] = [];
  const last = () => states.at(-1)!;
  const pass = (change: (state: RunState) => Partial<RunState>) => states.push({ ...last(), ...change(last()), tick: last().tick + 1 });
  const set = (change: Partial<RunState['controls']>) => pass((state) => ({ controls: { ...state.controls, ...change } }));
  script({
    wait: (seconds) => {
      for (let i = 0; i < seconds * TICKS_PER_S; i++) pass(() => ({}));
    },
    turn: (byDeg, rateDegPerS = 30, everyTicks = 1) => {
      const ticks = Math.round((Math.abs(byDeg) / rateDegPerS) * TICKS_PER_S);
      const fromDeg = last().hold.headingDeg;
      for (let i = 1; i <= ticks; i++) {
        const done = i === ticks ? 1 : (Math.floor(i / everyTicks) * everyTicks) / ticks;
        pass((state) => ({ hold: { ...state.hold, headingDeg: wrapBearingDeg(fromDeg + byDeg * done) } }));
      }
    },
    gain: (gainDb) => set({ gainDb }),
    attenuator: (attenuatorDb) => set({ attenuatorDb }),
    tuneBy: (hz) => set({ tunedMHz: last().controls.tunedMHz + hz / 1e6 }),
    mark: () => {
      const { tick, at, hold, controls } = last();
      marks.push({
        atTick: tick,
        at,
        bearingDeg: hold.headingDeg,
        gainDb: controls.gainDb,
        attenuatorDb: controls.attenuatorDb,
        struckOut: false,
      });
    },
    jumpTo: (eM, nM) => pass(() => ({ at: { eM, nM } })),
  });
  const pulses = Array.from({ length: Math.floor((states.length - 5) / TICKS_PER_S) }, (_, s) =>
    pulseAt(states[s * TICKS_PER_S + 5]!, s + 0.25, leastDb),
  );
  const refuse = () => {
    throw new Error('a run made by hand has no radio');
  };
  return {
    exercise: { scenario, digest: '', world: FLAT, airspace: refuse, antenna: refuse, lineNoiseRaisedDb: 0 },
    run: { state: { ...last(), notebook: marks }, states, pulses, log: [], listener: { thresholdDb: 0 } },
  };
}

function pulseAt({ controls }: RunState, atS: number, leastDb: number | null): Pulse {
  const excessDb = leastDb === null ? null : controls.gainDb - controls.attenuatorDb - leastDb;
  const over = excessDb ?? -10;
  const heard = {
    atS,
    durationS: 0.02,
    pitchHz: 1_000,
    levelDb: over - 55,
    loudnessDb: over,
    audible: over >= 0,
    flatOut: over >= 55,
    sUnits: 0,
  };
  const truth = { tag: 0, tagAt: { eM: 0, nM: 0 }, distanceM: 0, trueBearingDeg: 0, powerDbm: -90, bestHeadingDeg: 0, bestPowerDbm: -90 };
  return { heard, truth: { ...truth, leastGainDb: leastDb, excessDb } };
}
