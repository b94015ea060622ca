import { expect, test } from 'vitest';
import { BLIND_PLACES, blindPlace, blindResult, chiSquare, studentT } from '../../../src/core/drills/blindTest';
import { heardAt } from '../../../src/core/listening/air';
import { randomFor } from '../../../src/core/random/draw';

// Tables of the chi-square and t distributions, as printed in any handbook.
test.each([
  [29, 45.722, 16.047],
  [9, 19.023, 2.7],
])('chi-square with %i degrees of freedom: 2.5 per cent lie above %f, as many below %f', (k, above, below) => {
  expect(Math.abs(chiSquare(k, 1) / above - 1)).toBeLessThan(0.005);
  expect(Math.abs(chiSquare(k, -1) / below - 1)).toBeLessThan(0.01);
});
test.each([
  [29, 2.0452],
  [9, 2.2622],
])('t with %i degrees of freedom: 2.5 per cent lie above %f', (k, t) => {
  expect(Math.abs(studentT(k) - t)).toBeLessThan(0.001);
});

const normal = (random: () => number) => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
const marked = (seed: string, sdDeg: number, biasDeg: number) => {
  const random = randomFor(seed, 'test');
  return Array.from({ length: BLIND_PLACES }, () => {
    const trueDeg = 360 * random();
    return { trueDeg, markedDeg: trueDeg + biasDeg + sdDeg * normal(random) };
  });
};

test('95 % bounds of spread and bias hold the truth in 93 to 97 % of 2,000 tests', () => {
  let [sd, bias] = [0, 0];
  for (let i = 0; i < 2_000; i++) {
    const result = blindResult(marked(`cover-${i}`, 4, 1))!;
    if (result.sdDeg.low <= 4 && 4 <= result.sdDeg.high) sd++;
    if (result.biasDeg.low <= 1 && 1 <= result.biasDeg.high) bias++;
  }
  for (const held of [sd, bias]) {
    expect(held / 2_000).toBeGreaterThan(0.93);
    expect(held / 2_000).toBeLessThan(0.97);
  }
});

test('a bearing on the wrong side is counted apart; too few bearings give no result', () => {
  const all = marked('sides', 3, 0);
  const turned = all.map((one, i) => (i < 2 ? { ...one, markedDeg: one.trueDeg + 180 } : one));
  expect(blindResult(turned)).toMatchObject({ places: 30, wrongSide: 2 });
  expect(blindResult(turned)!.sdDeg.value).toBeLessThan(5);
  expect(blindResult(all.slice(0, 9))).toBeNull();
});

test('thirty places, none twice, all to be heard', () => {
  const places = Array.from({ length: BLIND_PLACES }, (_, i) => blindPlace('places', i, { thresholdDb: 0 }));
  expect(new Set(places.map(({ trueDeg, distanceM }) => `${trueDeg}/${distanceM}`)).size).toBe(BLIND_PLACES);
  for (const { air, start, trueDeg } of places) expect(heardAt(air, start, trueDeg).audible).toBe(true);
});
