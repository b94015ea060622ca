import type { Scenario } from '../scenario/schema';
import type { MapPoint } from '../units/frames';
import { drivenOn } from '../world/drivable';
import { nearestWay } from '../world/nearestWay';
import { stepped } from '../world/polyline';
import { walkSecondsTo } from '../world/reachable';
import { walkable } from '../world/walking';
import type { World } from '../world/world';

/** Places along a road or track are looked at this far apart. */
const EVERY_M = 40;

/** The places at which a search may be started afresh: along roads and tracks, and where the exercise itself begins. */
export function startPlaces(world: World, scenario: Pick<Scenario, 'start'>): readonly MapPoint[] {
  const alongWays = world.tracks.filter(drivenOn(world)).flatMap(({ points }) => stepped(points, EVERY_M));
  const [eM, nM] = scenario.start.at;
  return [{ eM, nM }, ...alongWays.filter((at) => walkable(world, at))];
}

/** A chosen place is moved to the nearest road or track; where there is none it stays. Whole metres. */
export function snappedStart(world: World, chosen: MapPoint): MapPoint {
  const { eM, nM } = nearestWay(world, chosen, drivenOn(world))?.at ?? chosen;
  return { eM: Math.round(eM), nM: Math.round(nM) };
}

/** Minutes on foot from where the learner would start, against the quickest start that there was. */
export type StartJudged = {
  readonly chosen: { readonly at: MapPoint; readonly seconds: number | null } | null;
  readonly quickest: { readonly at: MapPoint; readonly seconds: number };
  /** Share of the start places that would have been quicker than the chosen one; `null` where none was chosen or no way leads. */
  readonly quickerShare: number | null;
};

/** `null` where no way leads from any start place to the tag. @param paceMPerS pace on level open ground */
export function judgeStart(
  world: World,
  places: readonly MapPoint[],
  chosen: MapPoint | null,
  tagAt: MapPoint,
  paceMPerS: number,
): StartJudged | null {
  const secondsFrom = walkSecondsTo(world, tagAt, paceMPerS);
  const timed = places.map((at) => ({ at, seconds: secondsFrom(at) })).filter(({ seconds }) => Number.isFinite(seconds));
  if (timed.length === 0) return null;
  const quickest = timed.reduce((a, b) => (b.seconds < a.seconds ? b : a));
  if (!chosen) return { chosen: null, quickest, quickerShare: null };
  const seconds = secondsFrom(chosen);
  const reached = Number.isFinite(seconds);
  const quickerShare = reached ? timed.filter((place) => place.seconds < seconds - 1).length / timed.length : null;
  return { chosen: { at: chosen, seconds: reached ? seconds : null }, quickest, quickerShare };
}
