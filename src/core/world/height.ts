import type { MapPoint, SpacePoint } from '../units/frames';
import { valueAt } from './grid';
import type { World } from './world';

/** Height of the ground above sea level, metres; beyond the map that of its rim. */
export const groundHeightM = (world: World, { eM, nM }: MapPoint): number => valueAt(world.groundM, eM, nM);

/** The point `overGroundM` above the ground. */
export const pointOver = (world: World, at: MapPoint, overGroundM: number): SpacePoint => ({
  eM: at.eM,
  nM: at.nM,
  zM: groundHeightM(world, at) + overGroundM,
});

/** True within the map. */
export const isOnMap = (world: World, { eM, nM }: MapPoint): boolean => eM >= 0 && nM >= 0 && eM <= world.sizeM && nM <= world.sizeM;
