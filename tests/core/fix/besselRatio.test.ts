import { expect, test } from 'vitest';
import { besselRatio, concentrationOf, resultantShortfall } from '../../../src/core/fix/besselRatio';

/** I1(k)/I0(k) by the trapezoid rule on exp(k cos t), which converges geometrically for a periodic function. */
function ratioByIntegral(kappa: number): number {
  let [i0, i1] = [0, 0];
  for (let step = 0; step < 4000; step++) {
    const t = (2 * Math.PI * step) / 4000;
    const weight = Math.exp(kappa * (Math.cos(t) - 1));
    i0 += weight;
    i1 += weight * Math.cos(t);
  }
  return i1 / i0;
}

test.each([1e-6, 0.01, 0.5, 1, 2, 5, 12, 39.9, 59.99, 60, 60.01, 100, 1000])(
  'A(%d) is the ratio of the integrals within 1e-12',
  (kappa) => {
    expect(Math.abs(besselRatio(kappa) - ratioByIntegral(kappa))).toBeLessThan(1e-12);
  },
);

// Abramowitz and Stegun table 9.8, value from memory: e^-1 I0(1) = 0.46575961, e^-1 I1(1) = 0.20791042.
test('A(1) is the tabled 0.20791042 / 0.46575961 within 1e-7', () => {
  expect(Math.abs(besselRatio(1) - 0.20791042 / 0.46575961)).toBeLessThan(1e-7);
});

test.each([1e-3, 0.1, 1, 3, 30, 59.999, 60, 61, 231.7, 1997.1, 1e5, 1e9, 1e13])(
  'the inverse gives kappa %d back within 1e-10 of itself',
  (kappa) => {
    expect(Math.abs(concentrationOf(resultantShortfall(kappa)) / kappa - 1)).toBeLessThan(1e-10);
  },
);

test('a shortfall of nothing is an infinite kappa, of everything a kappa of 0', () => {
  expect(concentrationOf(0)).toBe(Infinity);
  expect(concentrationOf(-1e-18)).toBe(Infinity);
  expect(concentrationOf(1)).toBe(0);
  expect(concentrationOf(1.7)).toBe(0);
});

test('a negative or missing kappa is refused', () => {
  expect(() => resultantShortfall(-1)).toThrow(RangeError);
  expect(() => resultantShortfall(Number.NaN)).toThrow(RangeError);
});
