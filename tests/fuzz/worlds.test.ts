import { expect, test } from 'vitest';
import { randomFor } from '../../src/core/random/draw';
import { RELIEF_STYLES, type Scenario, scenarioSchema } from '../../src/core/scenario/schema';
import { generateWorld } from '../../src/core/world/generate';
import { groundHeightM } from '../../src/core/world/height';
import { plainScenario } from '../core/world/fixtureScenario';

/** A drawn ground, valid by the schema, small enough to make quickly; the corners of the ranges come up often. */
function drawnGround(index: number): Scenario['ground'] {
  const random = randomFor(`world-${index}`, 'test');
  const within = (least: number, most: number) => least + (most - least) * Math.min(1, Math.max(0, 1.4 * random() - 0.2));
  const whole = (most: number) => Math.round(within(0, most));
  const sizeM = within(1_000, 1_600);
  return {
    ...plainScenario().ground,
    sizeM,
    cellM: within(10, 20),
    relief: {
      style: RELIEF_STYLES[index % RELIEF_STYLES.length]!,
      strengthM: within(0, 600),
      roughness: within(0, 1),
      baseHeightM: within(0, 1_500),
    },
    cover: { wood: within(0, 0.9), scrub: within(0, 0.6), wet: within(0, 0.6), rock: within(0, 0.4) },
    water: { lakes: whole(6), streams: whole(12) },
    tracks: whole(8),
    farms: whole(8),
    hamlets: whole(3),
  };
}

test.each([...Array(12).keys()])('drawn ground %i is made without a NaN, a stream uphill or a way off the map', (index) => {
  const ground = drawnGround(index);
  expect(scenarioSchema.safeParse(plainScenario({ ground })).success).toBe(true);
  const world = generateWorld({ seed: `fuzz-${index}`, ground });
  expect(world.groundM.values.every(Number.isFinite)).toBe(true);
  for (const { points } of world.streams)
    for (let i = 1; i < points.length; i++)
      expect(groundHeightM(world, points[i]!)).toBeLessThanOrEqual(groundHeightM(world, points[i - 1]!));
  for (const { points } of [...world.tracks, ...world.fieldWalls])
    for (const { eM, nM } of points) expect(eM >= 0 && nM >= 0 && eM <= world.sizeM && nM <= world.sizeM).toBe(true);
  for (const { spans } of world.powerLines)
    for (const { from, to, sagM } of spans) expect([from.zM, to.zM, sagM].every(Number.isFinite)).toBe(true);
});
