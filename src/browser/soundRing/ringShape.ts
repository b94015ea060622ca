import { type Heard, RING_STEP_DEG } from '../../core/listening/air';
import { toRad } from '../../core/units/angles';

/** The drawing's own units: the middle is 0, flat out lies at this radius. */
export const FLAT_OUT_R = 100;
/** Level at the middle of the ring, dB re flat out: a little under what an ear hears in quiet. */
const MIDDLE_DB = -66;

/** Radius of a level: one scale at every gain, so that rings can be compared. */
export const radiusOf = (levelDb: number): number => Math.min(FLAT_OUT_R, Math.max(0, (FLAT_OUT_R * (levelDb - MIDDLE_DB)) / -MIDDLE_DB));

export const spot = (deg: number, radius: number): string =>
  `${(radius * Math.sin(toRad(deg))).toFixed(2)} ${(-radius * Math.cos(toRad(deg))).toFixed(2)}`;

/** The whole ring as one closed outline. */
export const outline = (ring: readonly Heard[]): string =>
  `M${ring.map(({ headingDeg, levelDb }) => spot(headingDeg, radiusOf(levelDb))).join('L')}Z`;

/** Only what is heard, closed over the middle where the ring falls silent. */
export const heardArea = (ring: readonly Heard[]): string =>
  `M${ring.map(({ headingDeg, levelDb, audible }) => (audible ? spot(headingDeg, radiusOf(levelDb)) : '0 0')).join('L')}Z`;

/** The parts of the outline that are heard, or those that are not. */
export function stretches(ring: readonly Heard[], audible: boolean): string {
  let path = '';
  for (const [i, from] of ring.entries()) {
    const to = ring[(i + 1) % ring.length]!;
    const heard = from.audible && to.audible;
    if (heard !== audible) continue;
    path += `M${spot(from.headingDeg, radiusOf(from.levelDb))}L${spot(to.headingDeg, radiusOf(to.levelDb))}`;
  }
  return path;
}

/** Ticks outside the ring at every heading that drives the limiter to its end. */
export const flatOutTicks = (ring: readonly Heard[]): string =>
  ring
    .filter(({ flatOut, audible, headingDeg }) => flatOut && audible && headingDeg % (2 * RING_STEP_DEG) === 0)
    .map(({ headingDeg }) => `M${spot(headingDeg, FLAT_OUT_R + 4)}L${spot(headingDeg, FLAT_OUT_R + 10)}`)
    .join('');
