import { expect, test } from 'vitest';
import { heightsApart, heightsTogether } from '../../../src/core/desk/heightsApart';
import type { KeptHistory } from '../../../src/core/desk/history';
import { randomFor } from '../../../src/core/random/draw';
import { packedHeights } from '../../../src/core/scenario/ownHeights';
import type { Scenario } from '../../../src/core/scenario/schema';
import { plainScenario } from '../world/fixtureScenario';

const drawn = plainScenario();
const rough = (name: string) => {
  const random = randomFor(name, 'terrain');
  return Float64Array.from({ length: 90_000 }, () => 200 + 5 * random());
};
const own = (name: string): Scenario => ({
  ...drawn,
  ground: {
    ...drawn.ground,
    own: { ...packedHeights(rough(name), 300), source: 'invented' },
  },
});
const [first, second] = [own('first'), own('second')];
const steps = (value: Scenario, count: number) =>
  Array.from({ length: count }, (_, i) => ({ value: { ...value, title: `Title ${i}` }, deed: `change title ${i}` }));
const history: KeptHistory<Scenario> = { now: first, past: [...steps(drawn, 3), ...steps(second, 60)], future: steps(first, 40) };

test('a history of a hundred steps on two grounds is kept with the heights of each once, and comes back as it was', () => {
  const apart = heightsApart(history);
  expect(apart.heights).toHaveLength(2);
  const bytes = JSON.stringify(apart).length;
  expect(bytes).toBeLessThan(1.1 * (first.ground.own!.packed.length + second.ground.own!.packed.length) + 104 * 3_000);
  expect(JSON.stringify(history).length).toBeGreaterThan(10 * bytes);
  expect(heightsTogether(apart)).toEqual(history);
});

test('without own ground it is kept as it is, and what an older version kept is read as it is', () => {
  const plain = { now: drawn, past: steps(drawn, 2), future: [] };
  expect(heightsApart(plain)).toBe(plain);
  expect(heightsTogether(history)).toEqual(history);
});
