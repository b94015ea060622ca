import { expect, test } from 'vitest';
import { randomFor } from '../../../src/core/random/draw';
import { turnDeg, wrapBearingDeg } from '../../../src/core/units/angles';
import { bearingDeg, distanceM, stepAlong } from '../../../src/core/units/frames';

test.each([...Array(200).keys(), 128383])('seed %i: a turn leads to where it said', (seed) => {
  const random = randomFor(`angles-${seed}`, 'test');
  const [fromDeg, toDeg] = [720 * random() - 360, 720 * random() - 360];
  const offDeg = Math.abs(turnDeg(fromDeg + turnDeg(fromDeg, toDeg), toDeg));
  expect(offDeg).toBeLessThan(1e-9);
});

test.each([
  [-1e-17, 0],
  [360, 0],
  [-90, 270],
  [725, 5],
])('the bearing of %f degrees is %f', (deg, bearing) => {
  expect(Object.is(wrapBearingDeg(deg), bearing)).toBe(true);
});

test('half a turn is +180, never -180', () => {
  expect(turnDeg(0, 180)).toBe(180);
  expect(turnDeg(180, 0)).toBe(180);
  expect(turnDeg(350, 10)).toBe(20);
});

test('a step along a bearing lies at that bearing and distance', () => {
  const from = { eM: 400, nM: 700 };
  for (let deg = 0; deg < 360; deg += 13) {
    const to = stepAlong(from, deg, 250);
    expect(bearingDeg(from, to)).toBeCloseTo(deg, 8);
    expect(distanceM(from, to)).toBeCloseTo(250, 8);
  }
  expect(stepAlong(from, 90, 10).eM).toBeCloseTo(410, 9);
});
