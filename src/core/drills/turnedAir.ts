import type { Air } from '../listening/air';
import type { Spot } from '../listening/picture';
import { toRad, wrapBearingDeg } from '../units/angles';

/** The same air on ground turned clockwise by so many degrees: scenes are shaped one way and drawn any way. */
export const turnedAir = (air: Air, byDeg: number): Air => ({
  ...air,
  waves: air.waves.map((wave) => ({ ...wave, azimuthDeg: wrapBearingDeg(wave.azimuthDeg + byDeg) })),
  powerDbm: (headingDeg, rollDeg) => air.powerDbm(wrapBearingDeg(headingDeg - byDeg), rollDeg),
});

/** A place turned clockwise about the origin of a plan. */
export function turnedSpot([x, y]: Spot, byDeg: number): Spot {
  const [c, s] = [Math.cos(toRad(byDeg)), Math.sin(toRad(byDeg))];
  return [x * c + y * s, y * c - x * s];
}
