import { expect, test } from 'vitest';
import { BLIND_PLACES, blindResult, PUBLISHED } from '../../../src/core/drills/blindTest';
import { DRILLS } from '../../../src/core/drills/catalogue';
import { beginSession, numberText, rightShareOf, withAnswer } from '../../../src/core/drills/session';
import { randomFor } from '../../../src/core/random/draw';

test('right answers over all answers, and 0 before the first', () => {
  const trial = { level: 3 } as Parameters<typeof withAnswer>[1];
  let session = beginSession(DRILLS[0]!, { seed: 'share' });
  expect(rightShareOf(session)).toBe(0);
  for (const right of [true, false, true, true])
    session = withAnswer(session, trial, { right, error: 1 } as Parameters<typeof withAnswer>[2]);
  expect(rightShareOf(session)).toBe(0.75);
});

test.each([
  ['Hz', 123.4, '125'],
  ['m', 41.7, '42'],
  ['dB', 2.36, '2.4'],
] as const)('a number in %s, %f, is shown as %s', (unit, number, shown) => {
  expect(numberText({ unit } as Parameters<typeof numberText>[0], number)).toBe(shown);
});

// Springer 1979: spread 3.9 degrees and bias 0.2 degrees of bearings taken by hand.
test('a listener with the published spread and bias gets bounds that hold both, in at least 85 of 100 tests', () => {
  const { sdDeg, biasDeg } = PUBLISHED.find(({ source }) => source === 'Springer 1979') as { sdDeg: number; biasDeg: number };
  let held = 0;
  for (let i = 0; i < 100; i++) {
    const random = randomFor(`published-${i}`, 'test');
    const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const bearings = Array.from({ length: BLIND_PLACES }, () => ({ trueDeg: 90, markedDeg: 90 + biasDeg + sdDeg * normal() }));
    const result = blindResult(bearings)!;
    if ([result.sdDeg, result.biasDeg].every(({ low, high }, k) => low <= [sdDeg, biasDeg][k]! && [sdDeg, biasDeg][k]! <= high)) held++;
  }
  expect(held).toBeGreaterThanOrEqual(85);
});
