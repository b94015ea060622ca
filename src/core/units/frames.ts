import { toDeg, toRad, wrapBearingDeg } from './angles';

/** A point on the map: metres east and north of the scenario's origin, its south-west corner. */
export type MapPoint = { readonly eM: number; readonly nM: number };

/** A point in space: the map point and its height above sea level, metres. */
export type SpacePoint = MapPoint & { readonly zM: number };

/** Horizontal distance, metres. */
export const distanceM = (a: MapPoint, b: MapPoint): number => Math.hypot(b.eM - a.eM, b.nM - a.nM);

/** Bearing of `to` seen from `from`, degrees clockwise from true north; 0 where the points coincide. */
export const bearingDeg = (from: MapPoint, to: MapPoint): number => wrapBearingDeg(toDeg(Math.atan2(to.eM - from.eM, to.nM - from.nM)));

/** The point `lengthM` metres from `from` along `alongDeg`. */
export function stepAlong(from: MapPoint, alongDeg: number, lengthM: number): MapPoint {
  return { eM: from.eM + lengthM * Math.sin(toRad(alongDeg)), nM: from.nM + lengthM * Math.cos(toRad(alongDeg)) };
}
