import { expect, test } from 'vitest';
import { worldDigest } from '../../../src/core/world/digest';
import { generateWorld } from '../../../src/core/world/generate';
import { valueAt } from '../../../src/core/world/grid';
import { groundHeightM } from '../../../src/core/world/height';
import { COVER, type Span, type World } from '../../../src/core/world/world';
import { groundOf, RELIEF_STYLES, worldOf } from './sixGrounds';

const shareOf = (world: World, kind: number): number =>
  world.cover.values.filter((value) => value === kind).length / world.cover.values.length;

/** Every number in the world, however deep. */
function* numbersIn(value: unknown): Generator<number> {
  if (typeof value === 'number') yield value;
  else if (ArrayBuffer.isView(value)) yield* value as unknown as Iterable<number>;
  else if (value && typeof value === 'object') for (const inner of Object.values(value)) yield* numbersIn(inner);
}

test.each(RELIEF_STYLES)('%s: streams never run uphill, not by a bit', (style) => {
  const world = worldOf(style);
  expect(world.streams.length).toBeGreaterThan(0);
  for (const { points } of world.streams)
    for (let i = 1; i < points.length; i++)
      expect(groundHeightM(world, points[i]!)).toBeLessThanOrEqual(groundHeightM(world, points[i - 1]!));
});

test.each(RELIEF_STYLES)('%s: every cell off the rim has a neighbour no higher: no pits but lakes, which are level', (style) => {
  const { groundM, cover } = worldOf(style);
  const { columns, rows, values } = groundM;
  let pits = 0;
  for (let row = 1; row < rows - 1; row++)
    for (let column = 1; column < columns - 1; column++) {
      const i = row * columns + column;
      if (cover.values[i] === COVER.water) continue;
      const around = [-1, 1, -columns, columns, -columns - 1, -columns + 1, columns - 1, columns + 1].map((step) => values[i + step]!);
      if (around.every((h) => h > values[i]!)) pits++;
    }
  expect(pits).toBe(0);
});

test.each(RELIEF_STYLES)('%s: cover shares are within 3 % of the map of the wished ones', (style) => {
  const world = worldOf(style);
  const { cover } = groundOf(style).ground;
  for (const kind of ['wood', 'scrub', 'wet', 'rock'] as const)
    expect(Math.abs(shareOf(world, COVER[kind]) - cover[kind])).toBeLessThan(0.03);
});

test.each(RELIEF_STYLES)('%s: the relief spans the wished height to 10 % and 4 m, from its base', (style) => {
  const { relief } = groundOf(style).ground;
  const heights = worldOf(style).groundM.values;
  const [low, high] = [heights.reduce((a, b) => Math.min(a, b)), heights.reduce((a, b) => Math.max(a, b))];
  expect(Math.abs(high - low - relief.strengthM)).toBeLessThan(0.1 * relief.strengthM + 4);
  expect(Math.abs(low - relief.baseHeightM)).toBeLessThan(0.05 * relief.strengthM + 4);
});

test.each(RELIEF_STYLES)('%s: no number in the world is NaN or infinite', (style) => {
  for (const value of numbersIn(worldOf(style))) if (!Number.isFinite(value)) expect.fail(`found ${value}`);
});

test.each(RELIEF_STYLES)('%s: ways, streams and walls keep to the map', (style) => {
  const world = worldOf(style);
  expect(world.tracks.length).toBeGreaterThan(2);
  for (const { points } of [...world.tracks, ...world.streams, ...world.fieldWalls])
    for (const { eM, nM } of points) {
      expect(Math.min(eM, nM)).toBeGreaterThanOrEqual(0);
      expect(Math.max(eM, nM)).toBeLessThanOrEqual(world.sizeM);
    }
});

test.each(RELIEF_STYLES)('%s: no way runs through water', (style) => {
  const world = worldOf(style);
  let wet = 0;
  for (let i = 0; i < world.trackMask.values.length; i++) if (world.trackMask.values[i] && world.cover.values[i] === COVER.water) wet++;
  expect(wet).toBe(0);
});

test.each(RELIEF_STYLES)('%s: a road climbs no more than 1 in 3 over any 60 m, and no more than 1 in 8 over half of its way', (style) => {
  const world = worldOf(style);
  const climbs: number[] = [];
  for (const { kind, points } of world.tracks) {
    if (kind !== 'road') continue;
    let runM = 0;
    let from = 0;
    for (let i = 1; i < points.length; i++) {
      runM += Math.hypot(points[i]!.eM - points[i - 1]!.eM, points[i]!.nM - points[i - 1]!.nM);
      if (runM < 60) continue;
      climbs.push(Math.abs(groundHeightM(world, points[i]!) - groundHeightM(world, points[from]!)) / runM);
      [from, runM] = [i, 0];
    }
  }
  climbs.sort((a, b) => a - b);
  expect(climbs.length).toBeGreaterThan(10);
  expect(climbs[climbs.length - 1]).toBeLessThan(1 / 3);
  expect(climbs[Math.floor(climbs.length / 2)]).toBeLessThan(1 / 8);
});

test.each(RELIEF_STYLES)('%s: woods keep off the summits: fewer in the highest tenth of the land than their share', (style) => {
  const world = worldOf(style);
  if (style === 'fen') return; // its summits are 16 m isles
  const heights = Float32Array.from(world.groundM.values).sort();
  const high = heights[Math.floor(0.9 * heights.length)]!;
  let [wood, all] = [0, 0];
  for (let i = 0; i < heights.length; i++)
    if (world.groundM.values[i]! > high) {
      all++;
      if (world.cover.values[i] === COVER.wood) wood++;
    }
  expect(wood / all).toBeLessThan(shareOf(world, COVER.wood));
});

/** Least height of a span's wire over the ground, metres. */
function clearanceM(world: World, { from, to, sagM }: Span): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= 40; i++) {
    const t = i / 40;
    const wireM = from.zM + (to.zM - from.zM) * t - 4 * sagM * t * (1 - t);
    least = Math.min(least, wireM - valueAt(world.groundM, from.eM + (to.eM - from.eM) * t, from.nM + (to.nM - from.nM) * t));
  }
  return least;
}

test.each(RELIEF_STYLES)('%s: conductors hang at least 4.5 m over the ground, sag at most 3 % of their span', (style) => {
  const world = worldOf(style);
  expect(world.powerLines.map((line) => line.voltage)).toEqual(['low', 'medium', 'high']);
  for (const { spans } of world.powerLines)
    for (const span of spans) {
      expect(clearanceM(world, span)).toBeGreaterThan(4.5);
      const spanM = Math.hypot(span.to.eM - span.from.eM, span.to.nM - span.from.nM);
      expect(span.sagM).toBeLessThanOrEqual(0.03 * spanM);
      expect(span.sagM).toBeGreaterThan(0);
    }
});

test('the high line has its six conductors and one earth wire from tower to tower, the earth wire on top', () => {
  const high = worldOf('ridged').powerLines[2]!;
  const spansPerWire = high.supports.length - 1;
  expect(high.spans.length).toBe(7 * spansPerWire);
  expect(high.spans[6 * spansPerWire]!.from.zM).toBeCloseTo(high.supports[0]!.foot.zM + 42, 9);
  expect(high.spans[0]!.from.zM).toBeCloseTo(high.supports[0]!.foot.zM + 28, 9);
  expect(high.supports.every((support) => support.kind === 'tower')).toBe(true);
});

test('the building set by hand stands where and how the scenario says, on built cells', () => {
  const world = worldOf('smooth');
  const [a, b, c, d] = world.buildings[0]!.corners;
  expect((a.eM + c.eM) / 2).toBeCloseTo(900, 9);
  expect((a.nM + c.nM) / 2).toBeCloseTo(2_200, 9);
  expect(Math.hypot(b.eM - c.eM, b.nM - c.nM)).toBeCloseTo(24, 9);
  expect(Math.hypot(a.eM - b.eM, a.nM - b.nM)).toBeCloseTo(12, 9);
  // Corner c to corner b runs along the long side: bearing 30 degrees.
  expect((Math.atan2(b.eM - c.eM, b.nM - c.nM) * 180) / Math.PI).toBeCloseTo(30, 9);
  // Clockwise: the signed area over east and north is negative.
  const turn = (b.eM - a.eM) * (d.nM - a.nM) - (b.nM - a.nM) * (d.eM - a.eM);
  expect(turn).toBeLessThan(0);
});

test('cells under the middles of buildings are built', () => {
  const world = worldOf('dale');
  expect(world.buildings.length).toBeGreaterThan(6);
  for (const { corners } of world.buildings) {
    const [eM, nM] = [(corners[0].eM + corners[2].eM) / 2, (corners[0].nM + corners[2].nM) / 2];
    if (eM < world.sizeM && nM < world.sizeM)
      expect(world.cover.values[Math.floor(nM / world.cellM) * world.cover.columns + Math.floor(eM / world.cellM)]).toBe(COVER.built);
  }
});

test('same seed, same bits; another seed, other bits', () => {
  const again = generateWorld(groundOf('coast'));
  expect(worldDigest(again)).toBe(worldDigest(worldOf('coast')));
  expect(worldDigest(generateWorld(groundOf('coast', 'another')))).not.toBe(worldDigest(again));
});

test('one more track leaves the heights and the woods as they were', () => {
  const { seed, ground } = groundOf('ridged');
  const more = generateWorld({ seed, ground: { ...ground, tracks: 5 } });
  expect(more.groundM.values).toEqual(worldOf('ridged').groundM.values);
  expect(shareOf(more, COVER.wood)).toBeCloseTo(shareOf(worldOf('ridged'), COVER.wood), 2);
});

test('the digest sees a change of one bit of one height', () => {
  const world = worldOf('fen');
  const values = Float32Array.from(world.groundM.values);
  new Uint8Array(values.buffer)[40_000]! ^= 1;
  expect(worldDigest({ ...world, groundM: { ...world.groundM, values } })).not.toBe(worldDigest(world));
  expect(worldDigest(world)).toMatch(/^[0-9a-f]{16}$/);
});
