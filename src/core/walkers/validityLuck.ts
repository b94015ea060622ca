import type { Scenario } from '../scenario/schema';
import { distanceM, type MapPoint, stepAlong } from '../units/frames';
import { generateWorld } from '../world/generate';
import { coverAt } from '../world/profile';
import { walkable } from '../world/walking';
import { COVER, type World } from '../world/world';
import { fidgetsIn } from './fidgety';
import { STEADY_DECISIONS } from './hunt';
import type { Walker } from './policy';
import { walkerWith } from './steady';

/** Three faults at once: far too much gain, a hand on the knob in every sweep, hollows to read from. */
export const careless: Walker = walkerWith('careless', {
  wantedDb: STEADY_DECISIONS.wantedDb + 20,
  cuts: false,
  fidgetsIn: fidgetsIn(4),
  reads: 'low',
});

const CLOSE_START_M = 250;

/** The same exercise begun so near the tag that anybody finds it; `null` where nobody can stand there. */
export function startedClose(scenario: Scenario): Scenario | null {
  const world = generateWorld(scenario);
  const [eM, nM] = scenario.tags[0]!.at;
  for (let deg = 0; deg < 360; deg += 20) {
    const at = stepAlong({ eM, nM }, deg, CLOSE_START_M);
    const inside = Math.min(at.eM, at.nM, world.sizeM - at.eM, world.sizeM - at.nM) > 60;
    if (inside && walkable(world, at)) return { ...scenario, start: { ...scenario.start, at: [Math.round(at.eM), Math.round(at.nM)] } };
  }
  return null;
}

/** This far from the shore a tag can't be reached. */
const FROM_SHORE_M = 25;
const FIND_WITHIN_M = 8;
const FAR_M = [350, 1_400] as const;

/** The same exercise with a lake, the tag afloat on it out of reach from every shore; `null` where no lake is wide enough. */
export function tagAfloat(scenario: Scenario): Scenario | null {
  const lakes = { ...scenario, ground: { ...scenario.ground, water: { ...scenario.ground.water, lakes: 2 } } };
  const world = generateWorld(lakes);
  const start = { eM: scenario.start.at[0], nM: scenario.start.at[1] };
  if (!walkable(world, start)) return null;
  const tagAt = afloat(world, start);
  if (!tagAt) return null;
  const tag = { ...scenario.tags[0]!, at: [tagAt.eM, tagAt.nM] as [number, number], movement: { kind: 'stays' as const } };
  const timeS = Math.round((2.5 * distanceM(start, tagAt)) / scenario.limits.paceMPerS + 600);
  return { ...lakes, tags: [tag], limits: { ...scenario.limits, timeS, findWithinM: FIND_WITHIN_M } };
}

/** The first place of the map, in rows, with water all round and a walk away from the start. */
function afloat(world: World, start: MapPoint): MapPoint | null {
  const isWater = ({ eM, nM }: MapPoint) => coverAt(world, eM, nM) === COVER.water;
  for (let nM = 100; nM < world.sizeM - 100; nM += 10) {
    for (let eM = 100; eM < world.sizeM - 100; eM += 10) {
      const at = { eM, nM };
      const farM = distanceM(at, start);
      if (!isWater(at) || farM < FAR_M[0] || farM > FAR_M[1]) continue;
      if ([...Array(12).keys()].every((i) => [10, FROM_SHORE_M].every((m) => isWater(stepAlong(at, 30 * i, m))))) return at;
    }
  }
  return null;
}
