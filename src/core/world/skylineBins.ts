import { unitDirections } from './directions';

/** Directions of a skyline: half a degree each, the first to the north, clockwise. */
export const SKYLINE_BINS = 720;
export const BIN_DIRECTIONS = unitDirections(SKYLINE_BINS);

/** The bin a unit vector falls into, by halving; no arc functions, so that every engine agrees. */
export function binToward(east: number, north: number): number {
  let low = 0;
  let high = SKYLINE_BINS / 2;
  // On the western side the search runs over the half turn that starts in the south.
  const offset = east < 0 || (east === 0 && north < 0) ? SKYLINE_BINS / 2 : 0;
  const [e, n] = offset ? [-east, -north] : [east, north];
  while (high - low > 1) {
    const mid = Math.floor((low + high) / 2);
    if (BIN_DIRECTIONS.north[mid]! * e - BIN_DIRECTIONS.east[mid]! * n >= 0) low = mid;
    else high = mid;
  }
  return low + offset;
}
