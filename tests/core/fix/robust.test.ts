import { expect, test } from 'vitest';
import { fisherF95 } from '../../../src/core/fix/ellipse';
import { andrewsLoss, robustWeight } from '../../../src/core/fix/robust';

test('Huber weights are 1 up to 1.5 spreads and fall as 1.5 / t', () => {
  expect(robustWeight('huber', 1.5)).toBe(1);
  expect(robustWeight('huber', 3)).toBe(0.5);
});

test('Andrews weights are sin(t / 1.5) / (t / 1.5), 1 at 0 and 0 from 1.5 pi on', () => {
  expect(robustWeight('andrews', 0)).toBe(1);
  expect(robustWeight('andrews', 1.5 * (Math.PI / 2))).toBeCloseTo(2 / Math.PI, 12);
  expect(robustWeight('andrews', 1.5 * Math.PI)).toBe(0);
  expect(robustWeight('andrews', 50)).toBe(0);
});

test.each([1e-5, 0.3, 1, 2.5, 4, 4.7, 6])('the slope of the Andrews loss at %d spreads is t times the weight', (t) => {
  const slope = (andrewsLoss(t + 1e-6) - andrewsLoss(t - 1e-6)) / 2e-6;
  expect(Math.abs(slope - t * robustWeight('andrews', t))).toBeLessThan(1e-6);
});

// Tables of the F distribution (any statistics textbook), value from memory: F0.95(2, m).
test.each([
  [1, 199.5],
  [2, 19.0],
  [3, 9.55],
  [5, 5.79],
  [10, 4.1],
])('F0.95 with 2 and %d degrees is the tabled %d', (freedom, tabled) => {
  expect(Math.abs(fisherF95(freedom) - tabled)).toBeLessThan(0.006);
});

test.each([1e-5, 9e-5, 1.2e-4, 1.6e-4])('Andrews weights near 0 are 1 - (t/1.5)^2 / 6: at %d within 1e-15', (t) => {
  // Differences from 1 are told, since a sign lost in them hardly moves the weight itself.
  expect(Math.abs(1 - robustWeight('andrews', t) - (t / 1.5) ** 2 / 6)).toBeLessThan(3e-16);
});
