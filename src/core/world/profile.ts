import type { MapPoint } from '../units/frames';
import { valueAt } from './grid';
import { gapM } from './polyline';
import { COVER, type World } from './world';

/** Ground under a straight line at equal steps, ends included. */
export type Profile = {
  readonly stepM: number;
  /** Height above sea level at each point, metres. */
  readonly groundM: Float64Array;
  /** COVER number at each point. */
  readonly cover: Uint8Array;
};

/**
 * The ground between two map points at steps of at most `maxStepM`.
 * @returns at least three points; first and last stand exactly at the ends
 */
export function profileBetween(world: World, from: MapPoint, to: MapPoint, maxStepM = world.cellM): Profile {
  const lengthM = gapM(from, to);
  const steps = Math.max(2, Math.ceil(lengthM / maxStepM));
  const groundM = new Float64Array(steps + 1);
  const cover = new Uint8Array(steps + 1);
  for (let i = 0; i <= steps; i++) {
    const eM = from.eM + ((to.eM - from.eM) * i) / steps;
    const nM = from.nM + ((to.nM - from.nM) * i) / steps;
    groundM[i] = valueAt(world.groundM, eM, nM);
    cover[i] = coverAt(world, eM, nM);
  }
  return { stepM: lengthM / steps, groundM, cover };
}

/** COVER number of the cell that holds the point; outside the map open ground. */
export function coverAt(world: World, eM: number, nM: number): number {
  const { columns, rows, cellM, values } = world.cover;
  const column = Math.floor(eM / cellM);
  const row = Math.floor(nM / cellM);
  if (column < 0 || row < 0 || column >= columns || row >= rows) return COVER.open;
  return values[row * columns + column]!;
}
