import { expect, test } from 'vitest';
import { stepAlong } from '../../../src/core/units/frames';
import { unitAlong } from '../../../src/core/world/directions';
import { nearestWay } from '../../../src/core/world/nearestWay';
import { quickestWalk, reachableWithin } from '../../../src/core/world/reachable';
import { onTrack, paceFactor, slopePace, walkable } from '../../../src/core/world/walking';
import { COVER } from '../../../src/core/world/world';
import { shapedWorld } from './shapedWorld';
import { RELIEF_STYLES, worldOf } from './sixGrounds';

const flat = shapedWorld(() => 100);
const middle = { eM: 1_000, nM: 1_000 };
/** A river from south to north, 40 m wide, with a ford of dry ground at its northern end. */
const river = shapedWorld(
  () => 100,
  2_000,
  10,
  (eM, nM) => (Math.abs(eM - 1_000) < 20 && nM < 1_800 ? COVER.water : COVER.open),
);

// Tobler 1993, exp(-3.5 |s + 0.05|) over its value on the level, value from memory.
test.each([-0.6, -0.5, -0.4, -0.3, -0.2, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6])(
  'pace on a slope of %d is that of the hiking function, to 1 %%',
  (rise) => {
    const expected = Math.exp(-3.5 * Math.abs(rise + 0.05)) / Math.exp(-3.5 * 0.05);
    expect(Math.abs(slopePace(rise) / expected - 1)).toBeLessThan(0.01);
  },
);

test('level ground has pace 1, and so has a fall of 1 in 10', () => {
  expect(slopePace(0)).toBe(1);
  expect(slopePace(-0.1)).toBe(1);
});

test.each([
  ['open', 1],
  ['wood', 0.6],
  ['scrub', 0.7],
  ['wet', 0.55],
  ['rock', 0.5],
  ['water', 0],
  ['built', 0],
] as const)('on level %s ground the pace is %d', (name, pace) => {
  const world = shapedWorld(
    () => 100,
    2_000,
    10,
    () => COVER[name],
  );
  expect(paceFactor(world, middle, unitAlong(70))).toBeCloseTo(pace, 12);
  expect(walkable(world, middle)).toBe(pace > 0);
});

test('a track through a wood is walked at 1.1', () => {
  const world = shapedWorld(
    () => 100,
    2_000,
    10,
    () => COVER.wood,
  );
  world.trackMask.values[100 * 200 + 100] = 1;
  expect(onTrack(world, 1_005, 1_005)).toBe(true);
  expect(onTrack(world, 1_015, 1_005)).toBe(false);
  expect(paceFactor(world, { eM: 1_005, nM: 1_005 })).toBe(1.1);
});

test('uphill 1 in 5 is slower than downhill 1 in 5, both slower than along the slope', () => {
  const slope = shapedWorld((eM) => 100 + 0.2 * eM);
  const [up, down, along] = [90, 270, 0].map((deg) => paceFactor(slope, middle, unitAlong(deg)));
  expect(up).toBeLessThan(down!);
  expect(down).toBeLessThan(along!);
});

test('nobody walks off the map', () => {
  expect(walkable(flat, { eM: -1, nM: 50 })).toBe(false);
  expect(paceFactor(flat, { eM: 50, nM: 2_001 })).toBe(0);
});

test('on flat ground two minutes at 1.4 m/s reach 168 m all round: 97 to 100 % of that circle, nothing beyond a square more', () => {
  const places = reachableWithin(flat, middle, 120, 1.4);
  const circle = (Math.PI * 168 * 168) / 400;
  expect(places.length / circle).toBeGreaterThan(0.9);
  expect(places.length / circle).toBeLessThanOrEqual(1.02);
  for (const { eM, nM } of places) expect(Math.hypot(eM - 1_010, nM - 1_010)).toBeLessThan(168 + 20);
});

test('a river is not crossed; the quickest walk goes round by its end', () => {
  const near = reachableWithin(river, { eM: 950, nM: 400 }, 200);
  expect(near.every(({ eM }) => eM < 1_000)).toBe(true);
  const walk = quickestWalk(river, { eM: 900, nM: 1_000 }, { eM: 1_100, nM: 1_000 })!;
  expect(walk.seconds * 1.4).toBeGreaterThan(2 * 800);
  expect(walk.seconds * 1.4).toBeLessThan(2 * 900);
  expect(Math.max(...walk.points.map(({ nM }) => nM))).toBeGreaterThan(1_800);
});

test('there is no walk to an island', () => {
  const island = shapedWorld(
    () => 100,
    2_000,
    10,
    (eM, nM) => (Math.max(Math.abs(eM - 1_000), Math.abs(nM - 1_000)) < 60 ? COVER.open : COVER.water),
  );
  island.cover.values.fill(COVER.open, 0, 200);
  expect(quickestWalk(island, { eM: 500, nM: 5 }, middle)).toBeUndefined();
});

test.each(RELIEF_STYLES)('%s: steps along a quickest walk stay on ground that can be walked', (style) => {
  const world = worldOf(style);
  const from = world.tracks[0]!.points[3]!;
  const places = reachableWithin(world, from, 900);
  const to = places[places.length - 1]!;
  const walk = quickestWalk(world, from, to)!;
  expect(Math.abs(walk.seconds - to.seconds)).toBeLessThan(1e-6);
  const stray = walk.points.slice(1, -1).filter((p) => !walkable(world, p));
  expect(stray).toEqual([]);
  expect(stepAlong(from, 0, 0)).toEqual(from);
});

test('the nearest way is found beside its middle and past its end', () => {
  const road = {
    kind: 'road',
    points: [
      { eM: 100, nM: 100 },
      { eM: 500, nM: 100 },
    ],
  } as const;
  const path = {
    kind: 'path',
    points: [
      { eM: 100, nM: 900 },
      { eM: 500, nM: 900 },
    ],
  } as const;
  const world = { ...flat, tracks: [road, path] };
  expect(nearestWay(world, { eM: 300, nM: 130 })).toEqual({ track: road, at: { eM: 300, nM: 100 }, distanceM: 30 });
  expect(nearestWay(world, { eM: 540, nM: 130 })!.distanceM).toBe(50);
  expect(nearestWay(world, { eM: 300, nM: 130 }, ({ kind }) => kind === 'path')!.track).toBe(path);
  expect(nearestWay(flat, middle)).toBeUndefined();
});
