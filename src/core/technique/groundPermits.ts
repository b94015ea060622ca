import { toRad } from '../units/angles';
import { type MapPoint, stepAlong } from '../units/frames';
import { paceFactor, walkable } from '../world/walking';
import type { World } from '../world/world';

/** How far ahead a walker plans: farther off there is time to go round. */
const AHEAD_M = 100;
const STEP_M = 10;
/** A way less than this share as quick as the way taken is worth going round: a wood beside a track, a steep face beside a slope. */
const WORTH_GOING_ROUND = 0.6;

/**
 * Does the ground permit to go `wantedDeg` instead of `takenDeg`? Not where the next 100 m are shut by water, a building or the
 * map's edge, nor where they would be less than 0.6 times as quick as the way taken.
 */
export function groundPermits(world: World, from: MapPoint, wantedDeg: number, takenDeg: number): boolean {
  const wanted = quickness(world, from, wantedDeg);
  return wanted !== null && wanted >= WORTH_GOING_ROUND * (quickness(world, from, takenDeg) ?? 0);
}

/** Mean share of the full pace on the next 100 m, `null` where they are shut. */
function quickness(world: World, from: MapPoint, alongDeg: number): number | null {
  const toward = { east: Math.sin(toRad(alongDeg)), north: Math.cos(toRad(alongDeg)) };
  let slowness = 0;
  for (let m = STEP_M; m <= AHEAD_M; m += STEP_M) {
    const at = stepAlong(from, alongDeg, m);
    if (!walkable(world, at)) return null;
    slowness += 1 / Math.max(1e-6, paceFactor(world, at, toward));
  }
  return AHEAD_M / STEP_M / slowness;
}
