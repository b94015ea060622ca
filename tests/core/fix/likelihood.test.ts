import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lineShortfall, shortfallAt, shortfallFarAway, shortfallOnStation, slopeAt } from '../../../src/core/fix/likelihood';
import { frameOf, toFrame, toMap } from '../../../src/core/fix/sightFrame';
import { bearingDeg, stepAlong } from '../../../src/core/units/frames';

const lines = [
  { at: { eM: 554045, nM: 2813867 }, bearingDeg: 300 },
  { at: { eM: 553355, nM: 2813873 }, bearingDeg: 20 },
  { at: { eM: 553207, nM: 2814120 }, bearingDeg: 90 },
];
const frame = frameOf(lines);
const weights = [1, 0.4, 0.8];

test('the frame leads back to the map within a micrometre at references of millions of metres', () => {
  const back = toMap(frame, toFrame(frame, { eM: 553455.14, nM: 2814130.72 }));
  expect(Math.hypot(back.eM - 553455.14, back.nM - 2814130.72)).toBeLessThan(1e-6);
});

test('the shortfall is the weighted sum of 1 - cos of the turns within 1e-12', () => {
  const point = { eM: 553600, nM: 2814000 };
  const direct = lines.reduce((sum, line, i) => {
    const turnRad = ((line.bearingDeg - bearingDeg(line.at, point)) * Math.PI) / 180;
    return sum + weights[i]! * (1 - Math.cos(turnRad));
  }, 0);
  expect(Math.abs(shortfallAt(frame, weights, toFrame(frame, point)) - direct)).toBeLessThan(1e-12);
});

test('slope and curvature are those of finite differences within 1e-6 at 100 points', () => {
  const offStations = fc.tuple(fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: -3, max: 3, noNaN: true }));
  fc.assert(
    fc.property(offStations, ([x, y]) => {
      fc.pre([...frame.x].every((stationX, i) => Math.hypot(x - stationX, y - frame.y[i]!) > 0.3));
      const h = 1e-5;
      const slope = slopeAt(frame, weights, { x, y });
      const value = (dx: number, dy: number) => shortfallAt(frame, weights, { x: x + dx, y: y + dy });
      expect(Math.abs((value(h, 0) - value(-h, 0)) / (2 * h) - slope.gx)).toBeLessThan(1e-6);
      expect(Math.abs((value(0, h) - value(0, -h)) / (2 * h) - slope.gy)).toBeLessThan(1e-6);
      const east = slopeAt(frame, weights, { x: x + h, y });
      const west = slopeAt(frame, weights, { x: x - h, y });
      const north = slopeAt(frame, weights, { x, y: y + h });
      const south = slopeAt(frame, weights, { x, y: y - h });
      expect(Math.abs((east.gx - west.gx) / (2 * h) - slope.hxx)).toBeLessThan(1e-6);
      expect(Math.abs((east.gy - west.gy) / (2 * h) - slope.hxy)).toBeLessThan(1e-6);
      expect(Math.abs((north.gy - south.gy) / (2 * h) - slope.hyy)).toBeLessThan(1e-6);
    }),
    { seed: 7, numRuns: 100 },
  );
});

test('the limit far away is what the shortfall tends to along the best direction, within 1e-5', () => {
  let least = Infinity;
  for (let deg = 0; deg < 360; deg += 0.1) {
    const rad = (deg * Math.PI) / 180;
    least = Math.min(least, shortfallAt(frame, weights, { x: 1e7 * Math.sin(rad), y: 1e7 * Math.cos(rad) }));
  }
  expect(Math.abs(least - shortfallFarAway(frame, weights))).toBeLessThan(1e-5);
});

test('the limit on a station is what the shortfall tends to on arriving along its own bearing, within 1e-6', () => {
  for (const [i, line] of lines.entries()) {
    const close = toFrame(frame, stepAlong(line.at, line.bearingDeg, 1e-4));
    expect(Math.abs(shortfallAt(frame, weights, close) - shortfallOnStation(frame, weights, i))).toBeLessThan(1e-6);
  }
});

test('two bearings from one station 20 degrees apart cost 2 - 2 cos 10 degrees on arriving there', () => {
  const at = { eM: 0, nM: 0 };
  const pair = frameOf([
    { at, bearingDeg: 350 },
    { at, bearingDeg: 10 },
  ]);
  expect(shortfallOnStation(pair, [1, 1], 0)).toBeCloseTo(2 - 2 * Math.cos(Math.PI / 18), 12);
});

test('a turn of a microradian costs 5e-13 without loss of digits', () => {
  const one = frameOf([{ at: { eM: 0, nM: 0 }, bearingDeg: 0 }]);
  expect(Math.abs(lineShortfall(one, 0, { x: 1e-6, y: 1 }) / 5e-13 - 1)).toBeLessThan(1e-9);
});

test('on a station the others keep their full shortfall by weight, and a second bearing taken there counts with the first', () => {
  const here = { eM: 0, nM: 0 };
  const some = frameOf([
    { at: here, bearingDeg: 350 },
    { at: { eM: 100, nM: 0 }, bearingDeg: 300 }, // 30 degrees off the station, which lies at 270
    { at: here, bearingDeg: 10 },
    { at: { eM: 0, nM: -80 }, bearingDeg: 60 }, // 60 degrees off
  ]);
  const by = [0.8, 0.5, 0.8, 0.25];
  const others = 0.5 * (1 - Math.cos(Math.PI / 6)) + 0.25 * (1 - Math.cos(Math.PI / 3));
  const own = 1.6 - 1.6 * Math.cos(Math.PI / 18);
  for (const station of [0, 2]) expect(shortfallOnStation(some, by, station)).toBeCloseTo(others + own, 12);
});
