import { expect, test } from 'vitest';
import { closeIn, closeSides } from '../../../src/core/listening/closeIn';
import { sampledBeep } from './sampledBeep';

const at = (headingDeg: number, attenuatorDb: number) => sampledBeep(closeIn, { headingDeg, attenuatorDb }).beepDb;

test('8 m from it at 30 dB front and back differ by less than 1 dB; with 30 dB of attenuator by more than 10', () => {
  expect(at(0, 0) - at(180, 0)).toBeLessThan(1);
  expect(at(0, 30) - at(180, 30)).toBeGreaterThan(10);
});

test('the body shades a whip held close by 6 to 12 dB', () => {
  const { front, back } = closeSides({ ...closeIn.start, choice: 1, walkM: 20, gainDb: 0 });
  expect(front.driveDb - back.driveDb).toBeGreaterThan(6);
  expect(front.driveDb - back.driveDb).toBeLessThan(12);
});

test('without an antenna the case hears it at 2 m and not at 40, the same on every heading, attenuator or not', () => {
  const off = (walkM: number, headingDeg: number, attenuatorDb = 0) =>
    sampledBeep(closeIn, { choice: 2, gainDb: 20, walkM, headingDeg, attenuatorDb });
  expect([off(2, 0).heard.audible, off(40, 0).heard.audible]).toEqual([true, false]);
  expect(off(2, 0).beepDb).toBeCloseTo(off(2, 150, 30).beepDb, 6);
});
