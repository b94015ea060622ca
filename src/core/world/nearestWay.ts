import type { MapPoint } from '../units/frames';
import { between, gapM } from './polyline';
import type { Track, World } from './world';

export type WayPoint = { readonly track: Track; readonly at: MapPoint; readonly distanceM: number };

/** The nearest point on any road, track or path (or only on those `wanted`); undefined where the world has none. */
export function nearestWay(world: World, from: MapPoint, wanted: (track: Track) => boolean = () => true): WayPoint | undefined {
  let nearest: WayPoint | undefined;
  for (const track of world.tracks) {
    if (!wanted(track)) continue;
    for (let i = 0; i + 1 < track.points.length; i++) {
      const at = nearestBetween(track.points[i]!, track.points[i + 1]!, from);
      const distanceM = gapM(at, from);
      if (!nearest || distanceM < nearest.distanceM) nearest = { track, at, distanceM };
    }
  }
  return nearest;
}

/** The point of the stretch a–b nearest to `p`. */
export function nearestBetween(a: MapPoint, b: MapPoint, p: MapPoint): MapPoint {
  const east = b.eM - a.eM;
  const north = b.nM - a.nM;
  const square = east * east + north * north;
  if (square === 0) return a;
  return between(a, b, Math.min(1, Math.max(0, ((p.eM - a.eM) * east + (p.nM - a.nM) * north) / square)));
}
