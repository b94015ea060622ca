import { begin } from '../run/begin';
import { type RunState, TICKS_PER_S } from '../run/state';
import { ANTENNA_IDS, type Scenario } from '../scenario/schema';
import { turnDeg, wrapBearingDeg } from '../units/angles';

/** Rows a second: between two of them places lie on a line and headings turn the short way. */
export const POSES_PER_S = 5;
const EVERY_TICKS = TICKS_PER_S / POSES_PER_S;

/** Where the walker stood and what the hands had set, five rows a second from the run's beginning, in typed columns. */
export type Poses = {
  readonly eM: Float64Array;
  readonly nM: Float64Array;
  readonly headingDeg: Float64Array;
  readonly rollDeg: Float32Array;
  readonly raised: Uint8Array;
  /** Metres climbed above the ground. */
  readonly aloftM: Float32Array;
  /** Number in `ANTENNA_IDS`. */
  readonly antenna: Uint8Array;
  readonly gainDb: Float32Array;
  readonly attenuatorDb: Float32Array;
  readonly tunedMHz: Float64Array;
  readonly walkedM: Float64Array;
};

export function posesOf(states: readonly RunState[]): Poses {
  // The run's last tick is a row whatever its number: nothing of the way is left out.
  const rows = states.filter((_, tick) => tick % EVERY_TICKS === 0 || tick === states.length - 1);
  return {
    eM: Float64Array.from(rows, ({ at }) => at.eM),
    nM: Float64Array.from(rows, ({ at }) => at.nM),
    headingDeg: Float64Array.from(rows, ({ hold }) => hold.headingDeg),
    rollDeg: Float32Array.from(rows, ({ hold }) => hold.rollDeg),
    raised: Uint8Array.from(rows, ({ hold }) => (hold.raised ? 1 : 0)),
    aloftM: Float32Array.from(rows, ({ hold }) => hold.aloftM ?? 0),
    antenna: Uint8Array.from(rows, ({ hold }) => ANTENNA_IDS.indexOf(hold.antenna)),
    gainDb: Float32Array.from(rows, ({ controls }) => controls.gainDb),
    attenuatorDb: Float32Array.from(rows, ({ controls }) => controls.attenuatorDb),
    tunedMHz: Float64Array.from(rows, ({ controls }) => controls.tunedMHz),
    walkedM: Float64Array.from(rows, (state) => state.walkedM),
  };
}

/** Seconds that the rows cover. */
export const posesEndS = ({ eM }: Poses): number => Math.max(0, eM.length - 1) / POSES_PER_S;

/** The state at any time of a run, as far as place, hands and sound need it; times outside the run take its ends. */
export function stateAt(scenario: Scenario, poses: Poses, atS: number): RunState {
  const place = Math.min(poses.eM.length - 1, Math.max(0, atS * POSES_PER_S));
  const i = Math.floor(place);
  const next = Math.min(poses.eM.length - 1, i + 1);
  const share = place - i;
  const between = (column: Float64Array) => column[i]! + (column[next]! - column[i]!) * share;
  const headingDeg = wrapBearingDeg(poses.headingDeg[i]! + turnDeg(poses.headingDeg[i]!, poses.headingDeg[next]!) * share);
  return {
    ...begin(scenario),
    tick: Math.round((place / POSES_PER_S) * TICKS_PER_S),
    at: { eM: between(poses.eM), nM: between(poses.nM) },
    hold: {
      headingDeg,
      rollDeg: poses.rollDeg[i]!,
      raised: poses.raised[i] === 1,
      antenna: ANTENNA_IDS[poses.antenna[i]!]!,
      ...(poses.aloftM[i]! > 0 ? { aloftM: poses.aloftM[i]! } : {}),
    },
    controls: { gainDb: poses.gainDb[i]!, attenuatorDb: poses.attenuatorDb[i]!, tunedMHz: poses.tunedMHz[i]! },
    walkedM: between(poses.walkedM),
  };
}
