import { expect, test } from 'vitest';
import { meetingOf, missDeg } from '../../../src/core/fix/bearingLine';
import { crossingAngleDeg, crossingFromDeg, stationUnder, widestCrossingDeg } from '../../../src/core/fix/crossing';

const at = (eM: number, nM: number) => ({ eM, nM });

test.each([
  [0, 90, 90],
  [10, 350, 20],
  [10, 170, 20],
  [45, 225, 0],
  [300, 75, 45],
])('lines along %d and %d degrees cross at %d', (a, b, crossing) => {
  expect(crossingAngleDeg(a, b)).toBe(crossing);
  expect(crossingAngleDeg(b, a)).toBe(crossing);
});

test('the widest crossing of three places is that of the best two', () => {
  expect(widestCrossingDeg([at(0, -100), at(10, -100), at(-100, 0)], at(0, 0))).toBeCloseTo(90, 10);
  expect(widestCrossingDeg([at(0, -100)], at(0, 0))).toBe(0);
});

test('a next bearing from the side crosses at 90 degrees, one from further back at 0', () => {
  const taken = [at(0, -1000)];
  expect(crossingFromDeg(at(700, 0), taken, at(0, 0))).toBeCloseTo(90, 10);
  expect(crossingFromDeg(at(0, -2000), taken, at(0, 0))).toBeCloseTo(0, 10);
});

test('a point is on top of a station within 1 m, or within a thousandth of the spread', () => {
  const places = [at(0, 0), at(5000, 0)];
  expect(stationUnder(places, at(0.9, 0), 100)).toBe(0);
  expect(stationUnder(places, at(1.1, 0), 100)).toBe(-1);
  expect(stationUnder(places, at(5002.4, 0), 2500)).toBe(1);
});

test('lines meet ahead, behind or not at all', () => {
  expect(meetingOf({ at: at(0, 0), bearingDeg: 45 }, { at: at(100, 0), bearingDeg: 315 })).toMatchObject({ kind: 'ahead' });
  expect(meetingOf({ at: at(0, 0), bearingDeg: 225 }, { at: at(100, 0), bearingDeg: 315 })).toEqual({ kind: 'behind' });
  expect(meetingOf({ at: at(0, 0), bearingDeg: 45 }, { at: at(100, 0), bearingDeg: 225 })).toEqual({ kind: 'parallel' });
});

test('a bearing taken 5 degrees clockwise of the point misses it by +5 degrees', () => {
  expect(missDeg({ at: at(0, 0), bearingDeg: 5 }, at(0, 100))).toBeCloseTo(5, 12);
  expect(missDeg({ at: at(0, 0), bearingDeg: 355 }, at(0, 100))).toBeCloseTo(-5, 12);
});
