import { expect, test } from 'vitest';
import { acrossWires } from '../../../src/core/technique/acrossWires';
import { groundPermits } from '../../../src/core/technique/groundPermits';
import { COVER } from '../../../src/core/world/world';
import { FLAT, handmadeWorld, MIDDLE, out } from './handmadeRun';

/** Ground of a kind from some metres north of the middle on. */
const beyond = (northM: number, cover: number) => handmadeWorld({ coverAt: (_, nM) => (nM > 4_000 + northM ? cover : COVER.open) });

test('open flat ground permits every way', () => {
  expect([0, 90, 200].every((deg) => groundPermits(FLAT, MIDDLE, deg, deg + 120))).toBe(true);
});

test('water 80 m ahead shuts the way, water 120 m ahead not yet', () => {
  expect(groundPermits(beyond(80, COVER.water), MIDDLE, 0, 90)).toBe(false);
  expect(groundPermits(beyond(120, COVER.water), MIDDLE, 0, 90)).toBe(true);
});

test('a wood (0.6 of the pace) is no reason to go round, wet ground (0.55) is', () => {
  expect(groundPermits(beyond(0, COVER.wood), MIDDLE, 0, 180)).toBe(true);
  expect(groundPermits(beyond(0, COVER.wet), MIDDLE, 0, 180)).toBe(false);
});

test("the map's edge shuts the way", () => {
  expect(groundPermits(FLAT, { eM: 4_000, nM: 7_950 }, 0, 90)).toBe(false);
});

test('a way that ends short of wires does not cross them, one that ends beyond does, one past their end does not', () => {
  const world = handmadeWorld({ wires: [[out(45, 100), out(315, 100)]] });
  expect(acrossWires(world, MIDDLE, out(0, 70))).toBe(false);
  expect(acrossWires(world, MIDDLE, out(0, 71))).toBe(true);
  expect(acrossWires(world, MIDDLE, out(50, 200))).toBe(false);
});
