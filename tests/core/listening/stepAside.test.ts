import { expect, test } from 'vitest';
import { ASIDE_M, BACK_ON_M, FADE_M, PLACES_M, stepAside } from '../../../src/core/listening/stepAside';
import { sampledBeep } from './sampledBeep';

const at = (walkM: number) => sampledBeep(stepAside, { walkM, headingDeg: 0 });

test('the fade is the deepest of the ten metres, and the step aside the best within two metres of it', () => {
  const ahead = (walkM: number) => stepAside.air({ ...stepAside.start, walkM }).powerDbm(0, 90);
  const deepest = PLACES_M.reduce((least, walkM) => (ahead(walkM) < ahead(least) ? walkM : least));
  const near = PLACES_M.filter((walkM) => Math.abs(walkM - FADE_M) <= ASIDE_M);
  expect(deepest).toBe(FADE_M);
  expect(near.reduce((best, walkM) => (ahead(walkM) > ahead(best) ? walkM : best))).toBe(BACK_ON_M);
});

test('a fade of more than 20 dB recovers within two metres', () => {
  expect(Math.abs(BACK_ON_M - FADE_M)).toBeLessThanOrEqual(ASIDE_M);
  expect(at(BACK_ON_M).beepDb - at(FADE_M).beepDb).toBeGreaterThan(20);
  expect([at(FADE_M).heard.audible, at(BACK_ON_M).heard.audible]).toEqual([false, true]);
});

test('the same place always fades the same way', () => {
  expect(at(3).beepDb).toBe(at(3).beepDb);
  expect(at(3).beepDb).not.toBe(at(4).beepDb);
});
