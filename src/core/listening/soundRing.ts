import { levelStepDb } from '../ear/loudness';
import { turnDeg } from '../units/angles';
import { type Heard, RING_STEP_DEG } from './air';

/** The loudest heading of a ring. */
export const loudest = (ring: readonly Heard[]): Heard => ring.reduce((best, heard) => (heard.driveDb > best.driveDb ? heard : best));

/** Heard the other way round. */
export const opposite = (ring: readonly Heard[], headingDeg: number): Heard => nearest(ring, headingDeg + 180);

/** The ring's entry nearest to a heading. */
export const nearest = (ring: readonly Heard[], headingDeg: number): Heard =>
  ring[((Math.round(headingDeg / RING_STEP_DEG) % ring.length) + ring.length) % ring.length]!;

/**
 * Degrees of heading in which an ear tells no difference from the loudest: every entry audible and within the ear's own step of it.
 * 0 where nothing is heard.
 */
export function sameArcDeg(ring: readonly Heard[]): number {
  const top = loudest(ring);
  if (!top.audible) return 0;
  const step = levelStepDb(top.loudnessDb);
  return RING_STEP_DEG * ring.filter((heard) => heard.audible && top.levelDb - heard.levelDb <= step).length;
}

/**
 * The sides that an ear would take: the loudest heading, and the loudest other peak a quarter turn or more away where that is heard too. A ring that is flat all
 * round at the back has its back side opposite.
 */
export function heardSides(ring: readonly Heard[]): readonly Heard[] {
  const top = loudest(ring);
  if (!top.audible) return [];
  const n = ring.length;
  const peaks = ring.filter(
    (heard, i) =>
      Math.abs(turnDeg(top.headingDeg, heard.headingDeg)) >= 90 &&
      heard.driveDb >= ring[(i + 1) % n]!.driveDb &&
      heard.driveDb >= ring[(i + n - 1) % n]!.driveDb,
  );
  const back = peaks.length > 0 ? loudest(peaks) : opposite(ring, top.headingDeg);
  return back.audible ? [top, back] : [top];
}
