import { generateWorld } from '../../src/core/world/generate';
import { opennessAt } from '../../src/core/world/openness';
import { skylineLayers } from '../../src/core/world/skyline';
import type { World } from '../../src/core/world/world';
import { groundOf, RELIEF_STYLES } from '../core/world/sixGrounds';
import type { Figure } from './figure';

const [WARM_UPS, RUNS] = [2, 7];

/** Milliseconds of one call: median of seven, after two that only warm the compiler. */
function medianMs(call: (run: number) => unknown): number {
  const times: number[] = [];
  for (let run = -WARM_UPS; run < RUNS; run++) {
    const startMs = performance.now();
    call(run);
    if (run >= 0) times.push(performance.now() - startMs);
  }
  times.sort((a, b) => a - b);
  return times[Math.floor(times.length / 2)]!;
}

/** A ground of one style on a given grid, everything on it. */
function worldOn(style: (typeof RELIEF_STYLES)[number], sizeM: number, cellM: number): World {
  const { seed, ground } = groundOf(style, `bench-${style}`);
  return generateWorld({ seed, ground: { ...ground, sizeM, cellM } });
}

export function figures(): Figure[] {
  const world = worldOn('ridged', 3_000, 10);
  // 200 places all over the map, so that one lucky hollow does not stand for all.
  const places = Array.from({ length: 200 }, (_, i) => ({ eM: 50 + ((i * 617) % 2_900), nM: 50 + ((i * 1_171) % 2_900) }));
  const opennessMs = medianMs(() => {
    for (const at of places) opennessAt(world, at);
  });
  const skylineMs = medianMs(() => {
    for (const at of places.slice(0, 20)) skylineLayers(world, at, 1.7);
  });
  return [
    ...RELIEF_STYLES.map((style) => ({
      name: `generateWorld, 512 x 512 cells, ${style}`,
      unit: 'ms',
      value: medianMs(() => worldOn(style, 5_120, 10)),
      goal: 400,
    })),
    { name: 'opennessAt, 3 km of ridges', unit: 'µs', value: (1_000 * opennessMs) / places.length, goal: 1_000 },
    { name: 'skylineLayers, 3 km of ridges', unit: 'ms', value: skylineMs / 20, goal: 15 },
  ];
}
