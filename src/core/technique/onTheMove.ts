import { type RunState, TICK_S, TICKS_PER_S } from '../run/state';
import { bearingDeg, distanceM } from '../units/frames';

/** Slower than this is standing; the steepest climb over rock is faster. */
const STANDING_BELOW_M_PER_S = 0.05;
/** A course is what a second to either side makes good. */
const COURSE_TICKS = TICKS_PER_S;

/** For each tick: has the learner walked since the one before? */
export const walkingTicks = (states: readonly RunState[]): Uint8Array =>
  Uint8Array.from(states, ({ at }, tick) => (tick > 0 && distanceM(states[tick - 1]!.at, at) >= STANDING_BELOW_M_PER_S * TICK_S ? 1 : 0));

/** The course made good around a tick, degrees. */
export const courseDegAt = (states: readonly RunState[], tick: number): number =>
  bearingDeg(states[Math.max(0, tick - COURSE_TICKS)]!.at, states[Math.min(states.length - 1, tick + COURSE_TICKS)]!.at);
