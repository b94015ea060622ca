import type { MapPoint } from '../units/frames';
import { unitDirections } from './directions';
import { type Grid, valueAt } from './grid';
import { EARTH_RADIUS_M } from './lineOfSight';
import type { World } from './world';

const RAYS = 72;
const FARTHEST_M = 3_000;
/** Each step of a ray is this much longer than the one before: near ground hides most and is looked at closest. */
const STEP_GROWTH = 1.07;
const DIRECTIONS = unitDirections(RAYS);

/**
 * How open a place is, 0..1: share of the ground within 3 km, or the map's edge, that is in view from the antenna,
 * each piece weighted by one over its distance. Ground alone counts, not what stands on it.
 * @param antennaHeightM over the ground there
 */
export function opennessAt(world: World, { eM, nM }: MapPoint, antennaHeightM = 1.7): number {
  const { groundM, sizeM, cellM } = world;
  const eyeM = valueAt(groundM, eM, nM) + antennaHeightM;
  let seen = 0;
  let all = 0;
  for (let ray = 0; ray < RAYS; ray++) {
    const east = DIRECTIONS.east[ray]!;
    const north = DIRECTIONS.north[ray]!;
    let steepest = Number.NEGATIVE_INFINITY;
    let stepM = 0.75 * cellM;
    for (let r = stepM; r <= FARTHEST_M; r += stepM) {
      const e = eM + r * east;
      const n = nM + r * north;
      if (e < 0 || n < 0 || e > sizeM || n > sizeM) break;
      const slope = (valueAt(groundM, e, n) - (r * r) / (2 * EARTH_RADIUS_M) - eyeM) / r;
      // A ring of ground grows with r and weighs 1/r: each metre along a ray counts the same.
      all += stepM;
      if (slope >= steepest) {
        seen += stepM;
        steepest = slope;
      }
      stepM *= STEP_GROWTH;
    }
  }
  return all > 0 ? seen / all : 0;
}

/** Openness at the middles of squares of about `stepM`. */
export function opennessMap(world: World, stepM: number, antennaHeightM = 1.7): Grid<Float32Array> {
  const columns = Math.max(1, Math.round(world.sizeM / stepM));
  const cellM = world.sizeM / columns;
  const values = new Float32Array(columns * columns);
  for (let row = 0, i = 0; row < columns; row++)
    for (let column = 0; column < columns; column++, i++)
      values[i] = opennessAt(world, { eM: (column + 0.5) * cellM, nM: (row + 0.5) * cellM }, antennaHeightM);
  return { columns, rows: columns, cellM, values };
}

/** Share of the values below `value`, ties counted half, in percent; 50 where there are none. */
export function percentileOf(value: number, values: ArrayLike<number>): number {
  if (values.length === 0) return 50;
  let below = 0;
  let equal = 0;
  for (let i = 0; i < values.length; i++) {
    if (values[i]! < value) below++;
    else if (values[i] === value) equal++;
  }
  return (100 * (below + equal / 2)) / values.length;
}
