import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { InputFaults } from '../../../src/core/scenario/faults';
import { loadScenario } from '../../../src/core/scenario/load';
import { packedHeights } from '../../../src/core/scenario/ownHeights';
import type { GroundPlan, Scenario } from '../../../src/core/scenario/schema';
import { digestOf } from '../../../src/core/scenario/seal';
import { generateWorld } from '../../../src/core/world/generate';
import { COVER } from '../../../src/core/world/world';
import { plainScenario } from './fixtureScenario';

const SIDE = 150;
/** 1.5 km in cells of 10 m, level at 100 m in the west half, rising by 30 % in the east half; nothing is drawn on it. */
const ramp = (cover: Partial<GroundPlan> = {}): Scenario => {
  const heights = Float64Array.from({ length: SIDE * SIDE }, (_, i) => 100 + 3 * Math.max(0, (i % SIDE) - 74));
  const plain = plainScenario({ start: { at: [200, 200], facingDeg: 0 } });
  return {
    ...plain,
    tags: [{ ...plain.tags[0]!, at: [600, 600] }],
    ground: {
      ...plain.ground,
      sizeM: 1_500,
      own: { ...packedHeights(heights, SIDE), source: 'invented' },
      cover: { wood: 0, scrub: 0, wet: 0, rock: 0 },
      water: { lakes: 0, streams: 0 },
      tracks: 0,
      farms: 0,
      hamlets: 0,
      fieldWalls: false,
      powerLines: [],
      buildings: [],
      ...cover,
    },
  };
};
const coverOf = (cover: Partial<GroundPlan>) => generateWorld(ramp(cover)).cover.values;
const columnsOf = (values: Uint8Array, kind: number) => [
  ...new Set([...values.keys()].filter((i) => values[i] === kind).map((i) => i % SIDE)),
];

test('by height: rock from 200 m up, and only there', () => {
  const values = coverOf({ coverRules: [{ cover: 'rock', aboveM: 200 }] });
  const columns = columnsOf(values, COVER.rock);
  expect(Math.min(...columns)).toBe(74 + Math.ceil(100 / 3));
  expect(columns).toHaveLength(SIDE - Math.min(...columns));
  expect(values.filter((one) => one === COVER.rock)).toHaveLength(columns.length * SIDE);
});

test('by slope: woods on the ramp, whose 30 % lie between the bounds, and none on the level', () => {
  const columns = columnsOf(coverOf({ coverRules: [{ cover: 'wood', steeperPercent: 28, flatterPercent: 32 }] }), COVER.wood);
  expect(columns).toContain(100);
  expect(Math.min(...columns)).toBeGreaterThanOrEqual(74);
  expect(columnsOf(coverOf({ coverRules: [{ cover: 'wood', steeperPercent: 32 }] }), COVER.wood)).toEqual([]);
  expect(columnsOf(coverOf({ coverRules: [{ cover: 'wet', flatterPercent: 1 }] }), COVER.wet)).toContain(10);
});

test('rules lie over one another in their order, patches over them', () => {
  const square: [number, number][] = [
    [900, 300],
    [1_200, 300],
    [1_200, 600],
    [900, 600],
  ];
  const values = coverOf({
    coverRules: [{ cover: 'wood' }, { cover: 'rock', aboveM: 150, belowM: 250 }],
    patches: [{ cover: 'water', outline: square }],
  });
  const at = (eM: number, nM: number) => values[Math.floor(nM / 10) * SIDE + Math.floor(eM / 10)];
  expect([at(100, 100), at(1_000, 100), at(1_000, 500), at(1_400, 100)]).toEqual([COVER.wood, COVER.rock, COVER.water, COVER.wood]);
  expect(values.filter((one) => one === COVER.water)).toHaveLength(30 * 30);
});

test('a patch covers its area to the cells along its rim, whichever way round it runs and wherever it crosses the map', () => {
  const star: [number, number][] = [
    [213, 400],
    [520, 455],
    [907, 390],
    [610, 702],
    [700, 1_103],
    [487, 840],
    [190, 1_011],
  ];
  const twice = star.reduce((sum, [e, n], i) => {
    const [e2, n2] = star[(i + 1) % star.length]!;
    return sum + e * n2 - e2 * n;
  }, 0);
  for (const outline of [star, [...star].reverse()]) {
    const cells = coverOf({ patches: [{ cover: 'scrub', outline }] }).filter((one) => one === COVER.scrub).length;
    expect(Math.abs(cells * 100 - Math.abs(twice) / 2)).toBeLessThan(6_000);
  }
  const corner: [number, number][] = [
    [0, 0],
    [1_500, 0],
    [1_500, 1_500],
    [0, 1_500],
  ];
  expect(coverOf({ patches: [{ cover: 'rock', outline: corner }] }).every((one) => one === COVER.rock)).toBe(true);
});

test('without rules and patches the ground and its digest are what they were', () => {
  expect(coverOf({}).every((one) => one === COVER.open)).toBe(true);
  const fell = loadScenario('open-fell.json', readFileSync('scenarios/open-fell.json', 'utf8'));
  // as it was, par and all, before the format had rules and patches
  expect(digestOf({ ...fell, parS: 1_390 })).toBe('cb69d7255ee73b9864c04f14856013bb0a5b198460cccdfb59b099bf324b6215');
});

const refusal = (cover: Partial<GroundPlan>): string => {
  try {
    loadScenario('cover.json', JSON.stringify(ramp(cover)));
    return 'none';
  } catch (error) {
    if (!(error instanceof InputFaults)) throw error;
    return error.faults.map(({ path, found, mend }) => `${path}: ${found}: ${mend}`).join('; ');
  }
};

test('bounds that cross, a patch beyond the map and one of two corners are told at their fields', () => {
  expect(refusal({ coverRules: [{ cover: 'wood', aboveM: 300, belowM: 200 }] })).toMatch(/^ground\.coverRules\.0: bounds that no ground/);
  const outside: [number, number][] = [
    [10, 10],
    [2_000, 10],
    [10, 80],
  ];
  expect(refusal({ patches: [{ cover: 'wood', outline: outside }] })).toMatch(/^ground\.patches\.0\.outline\.1: \[2000, 10\] lies outside/);
  expect(refusal({ patches: [{ cover: 'wood', outline: outside.slice(0, 2) }] })).toMatch(/ground\.patches\.0\.outline.*3 to 24 places/);
});
