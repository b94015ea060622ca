/**
 * Unit vectors of bearings by plain arithmetic: the engines' own sine and cosine differ in the last bits,
 * and a building set by hand must stand on the same bits everywhere.
 */
export type UnitVector = { readonly east: number; readonly north: number };

const RAD_PER_DEG = 0.017453292519943295;

/** Sine of an angle in [-pi/4, pi/4], Taylor series to the 15th power: error below 1e-16. */
function sineNearZero(x: number): number {
  const q = x * x;
  return x * (1 + (q / -6) * (1 + (q / -20) * (1 + (q / -42) * (1 + (q / -72) * (1 + (q / -110) * (1 + (q / -156) * (1 + q / -210)))))));
}

/** Cosine of an angle in [-pi/4, pi/4], Taylor series to the 16th power: error below 1e-16. */
function cosineNearZero(x: number): number {
  const q = x * x;
  return (
    1 +
    (q / -2) * (1 + (q / -12) * (1 + (q / -30) * (1 + (q / -56) * (1 + (q / -90) * (1 + (q / -132) * (1 + (q / -182) * (1 + q / -240)))))))
  );
}

/** The unit vector along a bearing in degrees, clockwise from north; any finite bearing. */
export function unitAlong(bearingDeg: number): UnitVector {
  const quarter = Math.round(bearingDeg / 90);
  const x = (bearingDeg - 90 * quarter) * RAD_PER_DEG;
  const sine = sineNearZero(x);
  const cosine = cosineNearZero(x);
  switch (((quarter % 4) + 4) % 4) {
    case 0:
      return { east: sine, north: cosine };
    case 1:
      return { east: cosine, north: -sine };
    case 2:
      return { east: -sine, north: -cosine };
    default:
      return { east: -cosine, north: sine };
  }
}

/** `count` unit vectors at equal turns, the first to the north, clockwise: east parts, north parts. */
export function unitDirections(count: number): { readonly east: Float64Array; readonly north: Float64Array } {
  const east = new Float64Array(count);
  const north = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const unit = unitAlong((360 * i) / count);
    east[i] = unit.east;
    north[i] = unit.north;
  }
  return { east, north };
}

/** Length of a map vector, metres; a square root only, for the same reason. */
export const lengthM = (eastM: number, northM: number): number => Math.sqrt(eastM * eastM + northM * northM);
