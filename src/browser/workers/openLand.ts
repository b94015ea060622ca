import type { Scenario } from '../../core/scenario/schema';
import type { World } from '../../core/world/world';
import type { LandDrawing } from '../map/landDrawing';
import { openWorker } from './openWorker';

export type Land = { readonly world: World; readonly land: LandDrawing };

/** The world of a scenario and its drawing, from a worker of its own. `reached` is told when the ground is there and the drawing is not. */
export function openLand(scenario: Scenario, reached: () => void): Promise<Land> {
  const worker = openWorker('land');
  return new Promise<Land>((resolve, reject) => {
    let world: World | null = null;
    worker.onmessage = ({ data }: MessageEvent<{ world: World } | { land: LandDrawing }>) => {
      if ('world' in data) {
        world = data.world;
        reached();
      } else if (world) resolve({ world, land: data.land });
    };
    worker.onerror = ({ message }) => reject(new Error(`The ground could not be made: ${message}`));
    worker.postMessage(scenario);
  }).finally(() => worker.terminate());
}
