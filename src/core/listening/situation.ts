import type { HabitId } from '../technique/habit';
import type { HeardThen, Situation } from './hearAgain';

/** What is known of a moment beside how it was held: what was heard, and what lay about. */
export type Surroundings = {
  readonly audible: boolean;
  readonly flatOut: boolean;
  /** Straight distance to the nearest wire or pole, metres; Infinity where there is none. */
  readonly wiresM: number;
  readonly inWood: boolean;
  /** What the antenna lost by how it was rolled, dB. */
  readonly axisLossDb: number;
};

const CLOSE_M = 50;
/** A line of this nearness is what one hears, not only what one sees. */
const WIRES_M = 60;
const OFF_NOTE_HZ = 1_000;
const AXIS_DB = 10;
/** More than enough gain, as in the habit. */
const ENOUGH_DB = 10;
const BEHIND_DEG = 135;
const ASIDE_DEG = 25;

/**
 * What a habit's moment was an instance of. What would have spoilt any habit comes first (dial, nearness, axis, wires), then what the habit
 * itself is about.
 */
export function situationOf(habit: HabitId, then: HeardThen, about: Surroundings): Situation {
  const { excessDb, offDeg, distanceM, offsetHz } = then;
  if (Math.abs(offsetHz) > OFF_NOTE_HZ) return 'off the note';
  if (distanceM <= CLOSE_M && (about.flatOut || excessDb === null || excessDb > ENOUGH_DB)) return 'close';
  if (about.axisLossDb >= AXIS_DB) return 'wrong axis';
  if (habit === 'quietGain' || habit === 'setThenSweep') {
    if (about.flatOut) return 'saturated';
    return about.audible || (excessDb ?? -1) >= 0 ? 'too much gain' : 'not heard';
  }
  if (about.wiresM <= WIRES_M) return 'wires near';
  if (about.inWood) return 'woodland fade';
  if (habit === 'clearView') return 'low place';
  if (!about.audible) return 'low place';
  if (Math.abs(offDeg) >= BEHIND_DEG) return 'back signal';
  return Math.abs(offDeg) >= ASIDE_DEG ? 'bounce' : 'crossing';
}
