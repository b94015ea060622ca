import type { Fault } from '../scenario/faults';
import type { Scenario } from '../scenario/schema';
import { drivenOn } from '../world/drivable';
import { generateWorld } from '../world/generate';
import { nearestWay } from '../world/nearestWay';
import { walkable } from '../world/walking';
import type { World } from '../world/world';
import { BESIDE_WAY_M } from './drive';

/** Faults that show only on the ground itself: a start or a tag that stands where nobody can walk. */
export function groundFaults(file: string, scenario: Scenario, world: World = generateWorld(scenario)): readonly Fault[] {
  const blocked = ([eM, nM]: readonly [number, number]) => !walkable(world, { eM, nM });
  const faults: Fault[] = [];
  if (blocked(scenario.start.at)) {
    faults.push({
      file,
      path: 'start.at',
      found: 'the start stands in water, in a building or on the map’s edge',
      mend: 'move it onto open ground',
    });
  }
  const [eM, nM] = scenario.start.at;
  const wayM = scenario.limits.vehicle ? (nearestWay(world, { eM, nM }, drivenOn(world))?.distanceM ?? Number.POSITIVE_INFINITY) : 0;
  if (wayM > BESIDE_WAY_M) {
    const far = Number.isFinite(wayM)
      ? `the nearest road or track is ${Math.round(wayM)} m from the start`
      : 'the ground has no road or track';
    faults.push({
      file,
      path: 'limits.vehicle',
      found: `a vehicle, and ${far}`,
      mend: `move the start to within ${BESIDE_WAY_M} m of one, or take the vehicle out`,
    });
  }
  scenario.stages?.forEach(({ after }, i) => {
    if (after.kind === 'reached' && blocked(after.at)) {
      faults.push({
        file,
        path: `stages.${i}.after.at`,
        found: 'the place to be reached lies in water, in a building or on the map’s edge',
        mend: 'move it to where a walker can stand',
      });
    }
  });
  scenario.tags.forEach((tag, i) => {
    if (blocked(tag.at)) {
      faults.push({
        file,
        path: `tags.${i}.at`,
        found: 'the tag lies in water, in a building or on the map’s edge',
        mend: 'move it to where a walker can stand',
      });
    }
  });
  return faults;
}
