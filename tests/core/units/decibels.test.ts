import { expect, test } from 'vitest';
import { add, complex, divide, exponential, magnitude, multiply, squareRoot, subtract } from '../../../src/core/units/complex';
import { addPowersDb, toDb, toPowerRatio } from '../../../src/core/units/decibels';

test('two equal powers add up to 3.0103 dB more', () => {
  expect(addPowersDb(-80, -80)).toBeCloseTo(-80 + 10 * Math.log10(2), 12);
});

test('nothing added changes nothing, and nothing to nothing stays nothing', () => {
  expect(addPowersDb(-80, -Infinity)).toBe(-80);
  expect(addPowersDb(-Infinity, -Infinity)).toBe(-Infinity);
});

test('a ratio goes to decibels and back', () => {
  for (const db of [-120, -3, 0, 17.5]) expect(toDb(toPowerRatio(db))).toBeCloseTo(db, 10);
});

test('complex numbers: division undoes multiplication, the root squares back, exp(j pi) = -1', () => {
  const [a, b] = [complex(1.5, -2), complex(-0.3, 0.8)];
  expect(magnitude(subtract(divide(multiply(a, b), b), a))).toBeLessThan(1e-12);
  for (const z of [a, b, complex(-4), complex(0, -2)]) {
    const root = squareRoot(z);
    expect(root.re).toBeGreaterThanOrEqual(0);
    expect(magnitude(subtract(multiply(root, root), z))).toBeLessThan(1e-12);
  }
  expect(magnitude(add(exponential(complex(0, Math.PI)), complex(1)))).toBeLessThan(1e-12);
});
