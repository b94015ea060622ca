import type { Scenario } from '../../core/scenario/schema';
import { generateWorld } from '../../core/world/generate';
import { landDrawing } from '../map/landDrawing';

/** Ground and its drawing, made where it can't hold the page up. */
addEventListener('message', ({ data: scenario }: MessageEvent<Scenario>) => {
  const world = generateWorld(scenario);
  postMessage({ world });
  postMessage({ land: landDrawing(world) });
});
