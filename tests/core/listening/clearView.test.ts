import { expect, test } from 'vitest';
import { clearView, leastAtWalk } from '../../../src/core/listening/clearView';
import { sampledBeep } from './sampledBeep';

const at = (walkM: number) => sampledBeep(clearView, { walkM, headingDeg: 0, gainDb: 24 });

test('the gain of the crest is silence in the hollow, 20 dB and more apart in the samples', () => {
  expect(at(300).beepDb - at(0).beepDb).toBeGreaterThan(20);
  expect([at(0).heard.audible, at(300).heard.audible]).toEqual([false, true]);
});

test('from the slope to the crest every 20 m need less gain', () => {
  for (let walkM = 180; walkM < 300; walkM += 20) expect(leastAtWalk(walkM + 20)!).toBeLessThan(leastAtWalk(walkM)!);
});
