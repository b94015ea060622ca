import { expect, test } from 'vitest';
import { distanceFromLeastGainM } from '../../../src/core/technique/gainDistance';
import { suggestedDistance } from '../../../src/core/technique/suggestedDistance';
import { handmadeRun } from './handmadeRun';

test('a 10 mW tag with 15 dB of least gain is suggested to be 800 m away (computed independently for this project)', () => {
  expect(distanceFromLeastGainM(15)).toBe(800);
});

test('12 dB more least gain suggests twice the distance, 12 dB more power too', () => {
  expect(distanceFromLeastGainM(27)).toBeCloseTo(1600, 9);
  expect(distanceFromLeastGainM(15, 22)).toBeCloseTo(1600, 9);
});

test('-20.9 dB is outside the last 100 m, -21.1 dB within', () => {
  const close = (leastGainDb: number) =>
    suggestedDistance(handmadeRun(({ stand }) => stand(30), { leastGainDb: () => leastGainDb })).isClose(300);
  expect([close(-20.9), close(-21.1)]).toEqual([false, true]);
});

test('a fade or a glint of three pulses does not change what least gain suggests, and without a known least gain it suggests nothing', () => {
  const faded = handmadeRun(({ stand }) => stand(40), { leastGainDb: (_, atS) => (atS >= 19 && atS <= 21 ? 45 : 15) });
  expect(suggestedDistance(faded).atTickM(400)).toBe(800);
  const glinting = handmadeRun(({ stand }) => stand(40), { leastGainDb: (_, atS) => (atS >= 19 && atS <= 21 ? -25 : 15) });
  expect(suggestedDistance(glinting).atTickM(400)).toBe(800);
  const silent = handmadeRun(({ stand }) => stand(40), { leastGainDb: () => null });
  expect(suggestedDistance(silent).atTickM(400)).toBeNull();
});

test('what least gain says 10 s before counts, 11 s before does not', () => {
  const run = handmadeRun(({ stand }) => stand(60), { leastGainDb: (_, atS) => (atS === 20 ? 15 : null) });
  expect([suggestedDistance(run).atTickM(600), suggestedDistance(run).atTickM(620)]).toEqual([800, null]);
});
