/** Angles on the map. Bearings are degrees clockwise from true north in [0, 360); turns are signed, clockwise positive. */

/** Radians of `deg` degrees. */
export const toRad = (deg: number): number => (deg * Math.PI) / 180;

/** Degrees of `rad` radians. */
export const toDeg = (rad: number): number => (rad * 180) / Math.PI;

/** The same direction as a bearing in [0, 360). */
export function wrapBearingDeg(deg: number): number {
  const wrapped = deg % 360;
  const positive = wrapped < 0 ? wrapped + 360 : wrapped;
  return positive === 360 ? 0 : positive + 0; // tiny negatives round up to 360; + 0 turns -0 into 0
}

/** Signed turn from `fromDeg` to `toDeg`: degrees, clockwise positive, in (-180, 180]. */
export function turnDeg(fromDeg: number, toDeg: number): number {
  const diffDeg = wrapBearingDeg(toDeg - fromDeg);
  return diffDeg > 180 ? diffDeg - 360 : diffDeg;
}
