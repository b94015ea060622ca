import { expect, test } from 'vitest';
import {
  icc21,
  meanInterval,
  minimalDetectableChange,
  nonIncreasing,
  risesBy,
  runsFor,
  shareInterval,
  standardError,
  t95,
} from '../../../src/core/walkers/validityNumbers';

test('mean of 2, 4, 4, 4, 5, 5, 7, 9 is 5 with a 95 % interval of 2.365 x 2.138 / sqrt 8 to both sides', () => {
  const found = meanInterval([2, 4, 4, 4, 5, 5, 7, 9])!;
  expect(found.mean).toBe(5);
  expect(Math.abs(found.to - 5 - (2.365 * Math.sqrt(32 / 7)) / Math.sqrt(8))).toBeLessThan(1e-12);
});

test('t for 60 and 120 degrees of freedom is 2.000 and 1.980 within 0.005', () => {
  expect(Math.abs(t95(60) - 2.0)).toBeLessThan(0.005);
  expect(Math.abs(t95(120) - 1.98)).toBeLessThan(0.005);
});

// Wilson 1927, worked with z = 1.96 independently for this project.
test('9 of 10 is a share of 0.9 with the Wilson interval 0.596 to 0.982', () => {
  const { from, to } = shareInterval(9, 10);
  expect(Math.abs(from - 0.596)).toBeLessThan(0.0005);
  expect(Math.abs(to - 0.982)).toBeLessThan(0.0005);
});

test('pool adjacent violators: 90, 70, 80, 20 becomes 90, 75, 75, 20 and rises by 5', () => {
  expect(nonIncreasing([90, 70, 80, 20])).toEqual([90, 75, 75, 20]);
  expect(risesBy([90, 70, 80, 20])).toBe(5);
  expect(risesBy([90, 80, 80, 20])).toBe(0);
});

// Shrout and Fleiss 1979, table 2: six subjects, four judges; ICC(2,1) printed as 0.29.
const SHROUT_FLEISS = [
  [9, 2, 5, 8],
  [6, 1, 3, 2],
  [8, 4, 6, 8],
  [7, 1, 2, 6],
  [10, 5, 6, 9],
  [6, 2, 4, 7],
];

test('ICC(2,1) of the six subjects of Shrout and Fleiss 1979 is the printed 0.29', () => {
  expect(Math.abs(icc21(SHROUT_FLEISS)! - 0.29)).toBeLessThan(0.005);
});

test('raters that all say the same have an ICC of 1 and no error', () => {
  const table = [1, 5, 9].map((value) => [value, value, value]);
  expect(icc21(table)).toBe(1);
  expect(standardError(table)).toBe(0);
});

test('the minimal detectable change is 2.77 times the error of one measure', () => {
  expect(Math.abs(minimalDetectableChange(1) - 2.772)).toBeLessThan(0.001);
});

test('a single run of reliability 0.5 needs 4 runs for 0.8, one of 0.8 needs one, one of 0 never gets there', () => {
  expect([runsFor(0.8, 0.5), runsFor(0.8, 0.8), runsFor(0.8, 0)]).toEqual([4, 1, null]);
});
