import { antennaById } from '../antenna/catalogue';
import { clearestDialMHz } from '../receiver/tuning';
import type { Scenario } from '../scenario/schema';
import type { RunState } from './state';

/** The state at tick 0: standing at the start, antenna taken up as its kind is, facing as the exercise says. */
export function begin(scenario: Scenario): RunState {
  const { kit, start, aids, limits } = scenario;
  return {
    tick: 0,
    at: { eM: start.at[0], nM: start.at[1] },
    hold: { headingDeg: start.facingDeg, rollDeg: antennaById(kit.startAntenna).takenUpRollDeg, raised: false, antenna: kit.startAntenna },
    spinDegPerS: 0,
    controls: {
      gainDb: kit.startGainDb,
      attenuatorDb: kit.startAttenuatorDb,
      tunedMHz: roundedMHz(clearestDialMHz(scenario.tags[0]!.frequencyMHz) + kit.startOffsetHz / 1e6),
    },
    legs: { courseDeg: start.facingDeg, paceMPerS: 0, until: null },
    walkedM: 0,
    drivenM: 0,
    vehicle: limits.vehicle ? { at: { eM: start.at[0], nM: start.at[1] }, aboard: false } : null,
    blocked: false,
    busyUntilTick: 0,
    belief: aids.ownPosition ? null : { at: { eM: start.at[0], nM: start.at[1] }, walkedM: 0 },
    notebook: [],
    guess: null,
    rulings: [],
    beats: [],
    startChoice: null,
    declarations: [],
    declaredFixes: [],
    stages: [],
    interventions: [],
    ending: null,
  };
}

/** The dial moves in whole hertz. */
export const roundedMHz = (mhz: number): number => Math.round(mhz * 1e6) / 1e6;
