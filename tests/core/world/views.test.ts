import { expect, test } from 'vitest';
import { randomFor } from '../../../src/core/random/draw';
import { unitAlong, unitDirections } from '../../../src/core/world/directions';
import { groundHeightM, pointOver } from '../../../src/core/world/height';
import { lineOfSight } from '../../../src/core/world/lineOfSight';
import { opennessAt, opennessMap, percentileOf } from '../../../src/core/world/openness';
import { skylineLayers } from '../../../src/core/world/skyline';
import { binToward, SKYLINE_BINS } from '../../../src/core/world/skylineBins';
import { COVER } from '../../../src/core/world/world';
import { shapedWorld } from './shapedWorld';
import { worldOf } from './sixGrounds';

const flat = shapedWorld(() => 100, 10_000, 20);
/** A ridge from south to north, 60 m high, its crest at 1,000 m east. */
const ridge = shapedWorld((eM) => 100 + Math.max(0, 60 - 0.3 * Math.abs(eM - 1_000)));

test.each([...Array(72).keys()].map((i) => 5 * i + 0.37))('unit vector along %d degrees is sine and cosine to 1e-15', (deg) => {
  const unit = unitAlong(deg);
  expect(Math.abs(unit.east - Math.sin((deg * Math.PI) / 180))).toBeLessThan(1e-15);
  expect(Math.abs(unit.north - Math.cos((deg * Math.PI) / 180))).toBeLessThan(1e-15);
});

test('of four unit directions the second points exactly east, the third exactly south', () => {
  const { east, north } = unitDirections(4);
  expect([east[1], north[2]]).toEqual([1, -1]);
  expect(Math.abs(north[1]!) + Math.abs(east[2]!)).toBe(0);
});

// d^2 / (8 R) at mid-path: 4,000^2 / (8 * 8,500,000) = 0.2353 m.
test('over flat ground 4 km at 2 m the line clears by 2 m less the bulge of 0.235 m', () => {
  const sight = lineOfSight(flat, { eM: 1_000, nM: 5_000, zM: 102 }, { eM: 5_000, nM: 5_000, zM: 102 });
  expect(sight.clear).toBe(true);
  expect(Math.abs(sight.leastClearanceM - (2 - 0.2353))).toBeLessThan(0.0005);
});

test('at 1 m over flat ground 9 km is beyond the horizon: the bulge of 1.19 m cuts the line', () => {
  expect(lineOfSight(flat, { eM: 500, nM: 500, zM: 101 }, { eM: 9_500, nM: 500, zM: 101 }).clear).toBe(false);
});

test('a ridge of 60 m cuts the line from foot to foot, by 59 m or so, and not the line from crest to foot', () => {
  const [west, east, top] = [
    pointOver(ridge, { eM: 700, nM: 900 }, 1.7),
    pointOver(ridge, { eM: 1_300, nM: 1_100 }, 1.7),
    pointOver(ridge, { eM: 1_000, nM: 1_000 }, 1.7),
  ];
  const hidden = lineOfSight(ridge, west, east);
  expect(hidden.clear).toBe(false);
  expect(hidden.leastClearanceM).toBeLessThan(-54);
  expect(hidden.leastClearanceM).toBeGreaterThan(-59);
  expect(lineOfSight(ridge, top, east).clear).toBe(true);
});

test('line of sight is the same from both ends, to the bit, on 200 drawn pairs', () => {
  const world = worldOf('ridged');
  const random = randomFor('sight', 'test');
  const drawn = () => pointOver(world, { eM: 2_000 * random(), nM: 2_000 * random() }, 0.5 + 3 * random());
  let clear = 0;
  for (let i = 0; i < 200; i++) {
    const [a, b] = [drawn(), drawn()];
    expect(lineOfSight(world, a, b)).toEqual(lineOfSight(world, b, a));
    if (lineOfSight(world, a, b).clear) clear++;
  }
  expect(clear).toBeGreaterThan(5);
  expect(clear).toBeLessThan(150);
});

test('among parallel ridges a crest is more open than the hollow between, by 0.05 or more', () => {
  const ridges = shapedWorld((eM) => 100 + 0.3 * Math.abs((eM % 400) - 200));
  const [crest, hollow] = [805, 1_005].map((eM) => opennessAt(ridges, { eM, nM: 1_000 }));
  expect(crest).toBeGreaterThan(hollow! + 0.05);
});

// Not so everywhere: a broad valley floor sees all its sides, a round summit hides its own flanks from an eye at 1.7 m.
test('ridged: the highest tenth of the land is more open than the lowest by 0.02 or more', () => {
  const world = worldOf('ridged');
  const map = opennessMap(world, 100);
  const places = [...map.values].map((openness, i) => ({
    openness,
    heightM: groundHeightM(world, { eM: ((i % map.columns) + 0.5) * map.cellM, nM: (Math.floor(i / map.columns) + 0.5) * map.cellM }),
  }));
  places.sort((a, b) => a.heightM - b.heightM);
  const tenth = Math.floor(places.length / 10);
  const mean = (some: typeof places) => some.reduce((sum, { openness }) => sum + openness, 0) / some.length;
  expect(mean(places.slice(-tenth)) - mean(places.slice(0, tenth))).toBeGreaterThan(0.02);
});

test('on a plain everything is in view but what 1.7 m cannot see beyond its horizon', () => {
  // sqrt(2 R h) = sqrt(2 * 8.5e6 * 1.7) = 5.4 km: farther than the 3 km asked.
  expect(opennessAt(flat, { eM: 5_000, nM: 5_000 })).toBe(1);
});

test('beside a plain cut by a tall wall of ground, openness is the share on the near side', () => {
  const wall = shapedWorld((eM) => (eM > 1_300 && eM < 1_400 ? 400 : 100));
  const open = opennessAt(wall, { eM: 1_000, nM: 1_000 });
  expect(open).toBeGreaterThan(0.6);
  expect(open).toBeLessThan(0.85);
});

test('the openness map has at each square the openness of its middle', () => {
  const map = opennessMap(ridge, 250);
  expect([map.columns, map.rows, map.cellM]).toEqual([8, 8, 250]);
  expect(map.values[3 * 8 + 5]).toBe(Math.fround(opennessAt(ridge, { eM: 1_375, nM: 875 })));
});

test.each([
  [3, [1, 2, 3, 4, 5], 50],
  [3, [3, 3, 3, 3], 50],
  [0, [1, 2], 0],
  [9, [1, 2], 100],
  [2, [1, 2, 2, 4], 50],
  [1, [1, 2, 2, 4], 12.5],
  [7, [], 50],
])('percentile of %d among %j is %d, ties at mid-rank', (value, values, percentile) => {
  expect(percentileOf(value, values)).toBe(percentile);
});

test.each([0, 0.5, 89.5, 90, 179.5, 180, 180.5, 269, 270, 359.5])('bin toward %d degrees begins there', (deg) => {
  const { east, north } = unitDirections(SKYLINE_BINS);
  const bin = deg * 2;
  expect(binToward(east[bin]!, north[bin]!)).toBe(bin);
});

test('the skyline to the east of a ridge shows its crest to the west at its true slope and distance', () => {
  const { layers } = skylineLayers(ridge, { eM: 1_600, nM: 1_000 }, 1.7);
  const west = (270 / 360) * SKYLINE_BINS;
  const middle = layers[2]!;
  expect([middle.fromM, middle.toM]).toEqual([350, 800]);
  expect(Math.abs(middle.distanceM[west]! - 600)).toBeLessThan(15);
  expect(Math.abs(middle.slope[west]! - (60 - 1.7) / 600)).toBeLessThan(0.003);
  expect(middle.isSeen[west]).toBe(1);
  // Behind the crest the far plain is hidden.
  expect(layers[3]!.isSeen[west]).toBe(0);
});

test('bands past the edge of the map hold nothing', () => {
  const { layers } = skylineLayers(ridge, { eM: 1_600, nM: 1_000 }, 1.7);
  const east = SKYLINE_BINS / 4;
  expect(layers[3]!.slope[east]).toBe(Number.NEGATIVE_INFINITY);
  expect(layers[3]!.distanceM[east]).toBe(0);
});

test('woods raise the skyline and give their cover to it', () => {
  const wooded = shapedWorld(
    () => 100,
    2_000,
    10,
    (eM) => (eM > 1_500 ? COVER.wood : COVER.open),
  );
  const { layers } = skylineLayers(wooded, { eM: 1_000, nM: 1_000 }, 1.7);
  const east = SKYLINE_BINS / 4;
  expect(layers[2]!.cover[east]).toBe(COVER.wood);
  expect(Math.abs(layers[2]!.slope[east]! - 10.3 / 500)).toBeLessThan(0.001);
});

test('towers stand in the skyline at their bearing, far ones first, hidden ones marked', () => {
  const high = worldOf('ridged').powerLines[2]!;
  const world = { ...ridge, powerLines: [high] };
  const { items, wires } = skylineLayers(world, { eM: 700, nM: 1_000 }, 1.7);
  expect(items.length).toBe(high.supports.length);
  expect(wires.length).toBe(high.spans.length);
  for (let i = 1; i < items.length; i++) expect(items[i]!.distanceM).toBeLessThanOrEqual(items[i - 1]!.distanceM);
  for (const item of items) {
    expect(Math.hypot(item.toward.east, item.toward.north)).toBeCloseTo(1, 12);
    expect(item.topSlope - item.footSlope).toBeCloseTo(42 / item.distanceM, 9);
  }
});
