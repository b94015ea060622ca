import type { Fault } from '../scenario/faults';
import type { Scenario } from '../scenario/schema';
import { generateWorld } from '../world/generate';
import { walkable } from '../world/walking';
import type { World } from '../world/world';

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
