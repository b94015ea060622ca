import type { MapPoint } from '../units/frames';
import type { UnitVector } from './directions';
import { cellIndex, valueAt } from './grid';
import { isOnMap } from './height';
import { coverAt } from './profile';
import { COVER, type World } from './world';

/** Pace on each cover as a share of the pace on open ground. Common practice, no source. */
const COVER_PACE: Readonly<Record<number, number>> = {
  [COVER.open]: 1,
  [COVER.wood]: 0.6,
  [COVER.scrub]: 0.7,
  [COVER.wet]: 0.55,
  [COVER.water]: 0,
  [COVER.rock]: 0.5,
  [COVER.built]: 0,
};
const TRACK_PACE = 1.1;

/**
 * Pace for a rise over run along the way, level ground 1: Tobler's hiking function exp(-3.5 |s + 0.05|) (1993, values from memory)
 * divided by its value on the level, at every 0.1 from -0.6 to 0.6; straight lines between.
 */
const SLOPE_PACE = [0.174, 0.247, 0.35, 0.497, 0.705, 1, 1, 0.705, 0.497, 0.35, 0.247, 0.174, 0.122] as const;
const STEEPEST = 0.6;

export function slopePace(rise: number): number {
  const x = (Math.min(STEEPEST, Math.max(-STEEPEST, rise)) + STEEPEST) * 10;
  const at = Math.min(SLOPE_PACE.length - 2, Math.floor(x));
  return SLOPE_PACE[at]! + (SLOPE_PACE[at + 1]! - SLOPE_PACE[at]!) * (x - at);
}

/** True where a road, track or path runs through the cell. */
export const onTrack = (world: World, eM: number, nM: number): boolean => world.trackMask.values[cellIndex(world.trackMask, eM, nM)] === 1;

/** True where a person can stand: on the map, not in water, not in a building's cell unless a track runs through it. */
export function walkable(world: World, at: MapPoint): boolean {
  if (!isOnMap(world, at)) return false;
  const cover = coverAt(world, at.eM, at.nM);
  return cover !== COVER.water && (cover !== COVER.built || onTrack(world, at.eM, at.nM));
}

/**
 * Pace at a place as a share of the pace on level open ground: 0 where nobody walks, 1.1 on a level track.
 * @param toward unit vector of the course; without it the slope is left out
 */
export function paceFactor(world: World, at: MapPoint, toward?: UnitVector): number {
  if (!walkable(world, at)) return 0;
  const footing = onTrack(world, at.eM, at.nM) ? TRACK_PACE : COVER_PACE[coverAt(world, at.eM, at.nM)]!;
  if (!toward) return footing;
  const halfM = world.cellM / 2;
  const aheadM = valueAt(world.groundM, at.eM + halfM * toward.east, at.nM + halfM * toward.north);
  const behindM = valueAt(world.groundM, at.eM - halfM * toward.east, at.nM - halfM * toward.north);
  return footing * slopePace((aheadM - behindM) / world.cellM);
}
