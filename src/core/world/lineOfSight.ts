import type { SpacePoint } from '../units/frames';
import { gapM } from './polyline';
import { profileBetween } from './profile';
import type { World } from './world';

/** Radius of the Earth with the usual bending of radio rays (ITU-R P.526: median effective radius 8500 km). */
export const EARTH_RADIUS_M = 8_500_000;

export type Sight = {
  /** True if nothing of the ground reaches the straight line. */
  readonly clear: boolean;
  /** Least height of the line over the ground between the ends, Earth's bulge counted as ground; negative when cut off, metres. */
  readonly leastClearanceM: number;
};

/**
 * Line of sight between two points in space over the ground alone: woods and buildings are not counted.
 * The same answer from either end.
 */
export function lineOfSight(world: World, a: SpacePoint, b: SpacePoint): Sight {
  // One fixed way round, so that rounding along the line cannot differ between there and back.
  const [from, to] = a.eM < b.eM || (a.eM === b.eM && a.nM <= b.nM) ? [a, b] : [b, a];
  const lengthM = gapM(from, to);
  if (lengthM < 1e-6) return { clear: true, leastClearanceM: Number.POSITIVE_INFINITY };
  const { groundM, stepM } = profileBetween(world, from, to, world.cellM / 2);
  let leastClearanceM = Number.POSITIVE_INFINITY;
  for (let i = 1; i + 1 < groundM.length; i++) {
    const alongM = i * stepM;
    const lineM = from.zM + ((to.zM - from.zM) * alongM) / lengthM;
    const bulgeM = (alongM * (lengthM - alongM)) / (2 * EARTH_RADIUS_M);
    leastClearanceM = Math.min(leastClearanceM, lineM - bulgeM - groundM[i]!);
  }
  return { clear: leastClearanceM > 0, leastClearanceM };
}
