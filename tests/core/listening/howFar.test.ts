import { expect, test } from 'vitest';
import { howFar, inViewLikeM, leastAtM } from '../../../src/core/listening/howFar';
import { woodlandLossDb } from '../../../src/core/radio/woodland';
import { sampledBeep } from './sampledBeep';

const at = (walkM: number, choice = 0) => sampledBeep(howFar, { walkM, choice, headingDeg: 0, gainDb: 40 }).beepDb;

test('in view twice the distance is 12 dB softer in the samples, within 0.5 dB, from 500 m to 2 km', () => {
  for (const walkM of [500, 1_000]) expect(Math.abs(at(walkM) - at(2 * walkM) - 12)).toBeLessThan(0.5);
});

test('a wood of 400 m takes what P.833 says, whatever lies behind it', () => {
  for (const walkM of [1_000, 2_000])
    expect(Math.abs(leastAtM(1, walkM)! - leastAtM(0, walkM)! - woodlandLossDb(400, 150.1))).toBeLessThan(0.6);
});

test('1 km off behind the ridge it sounds more than 25 dB softer and seems more than twice as far', () => {
  expect(at(1_000) - at(1_000, 2)).toBeGreaterThan(25);
  expect(inViewLikeM(leastAtM(2, 1_000)!)).toBeGreaterThan(2_000);
});
