import { TICKS_PER_S } from '../run/state';
import { turnDeg } from '../units/angles';
import type { MapPoint } from '../units/frames';
import { distanceM } from '../units/frames';
import type { Evidence } from './habit';
import type { Sweep } from './sweeps';
import { turningTicks, unwrappedHeadings } from './sweeps';

/** A marked bearing, or a sweep that ended on a held heading. */
export type Reading = {
  readonly tick: number;
  readonly at: MapPoint;
  readonly bearingDeg: number;
  readonly marked: boolean;
  /** Taken from a roof or tower that was climbed for it. */
  readonly aloft?: boolean;
};

/** A heading counts as held after this rest at the end of a sweep. */
const HELD_S = 2;
/** The heading that a sweep ends on is its result only near the loudest pulse of the sweep; elsewhere it is a rest of the hand. */
const NEAR_LOUDEST_DEG = 30;
/** A mark this soon after a sweep is that sweep's reading. */
const SAME_READING_S = 30;

/** Readings in time order. A repeat within 10 m of the one before replaces it. Struck-out marks still were readings. */
export function readingsOf({ run }: Evidence, sweeps: readonly Sweep[]): readonly Reading[] {
  const turning = turningTicks(unwrappedHeadings(run.states));
  const marks: Reading[] = run.state.notebook.map(({ atTick, at, bearingDeg }) => ({ tick: atTick, at, bearingDeg, marked: true }));
  const held: Reading[] = sweeps.flatMap(({ fromTick, toTick }) => {
    const after = toTick + HELD_S * TICKS_PER_S;
    const state = run.states[toTick + 1];
    if (!state || !endsOnLoudest(run, fromTick, toTick)) return [];
    if (after >= run.states.length || turning.subarray(toTick + 1, after).some((on) => on === 1)) return [];
    if (marks.some(({ tick }) => tick >= toTick && tick - toTick <= SAME_READING_S * TICKS_PER_S)) return [];
    return [{ tick: toTick, at: state.at, bearingDeg: state.hold.headingDeg, marked: false }];
  });
  const all = [...marks, ...held].sort((a, b) => a.tick - b.tick);
  const placed = all.map((reading) => ((run.states[reading.tick]?.hold.aloftM ?? 0) > 0 ? { ...reading, aloft: true } : reading));
  return placed.filter((reading, i) => {
    const next = placed[i + 1];
    return !next || distanceM(reading.at, next.at) > 10;
  });
}

/** Is the last heading of a sweep near the one at which its loudest pulse was heard? */
function endsOnLoudest(run: Evidence['run'], fromTick: number, toTick: number): boolean {
  const heard = run.pulses.flatMap(({ heard: { atS, audible, loudnessDb } }) => {
    const tick = Math.floor(atS * TICKS_PER_S + 1e-6);
    return audible && tick >= fromTick && tick <= toTick ? [{ loudnessDb, headingDeg: run.states[tick]!.hold.headingDeg }] : [];
  });
  if (heard.length === 0) return false;
  const loudest = heard.reduce((a, b) => (b.loudnessDb > a.loudnessDb ? b : a));
  return Math.abs(turnDeg(loudest.headingDeg, run.states[toTick]!.hold.headingDeg)) <= NEAR_LOUDEST_DEG;
}
