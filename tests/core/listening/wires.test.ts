import { expect, test } from 'vitest';
import { loudestDeg, twoSides, wires } from '../../../src/core/listening/wires';
import { sampledBeep } from './sampledBeep';

const at = (walkM: number, headingDeg: number) => sampledBeep(wires, { walkM, headingDeg });

test('two-sided test: back to the wires, the transmitter’s side is heard and more than 10 dB louder than across', () => {
  expect(at(0, 0).heard.audible).toBe(true);
  expect(at(50, 180).heard.audible).toBe(false);
  expect(at(0, 0).beepDb - at(50, 180).beepDb).toBeGreaterThan(10);
});

test('on both sides the loudest heading is the line; without the wires it is the transmitter', () => {
  expect(loudestDeg({ ...wires.start, walkM: 0 })).toBe(180);
  expect(loudestDeg({ ...wires.start, walkM: 50 })).toBe(0);
  expect(loudestDeg({ ...wires.start, walkM: 0, choice: 1 })).toBe(0);
  expect(at(0, 180).beepDb).toBeGreaterThan(at(0, 0).beepDb + 2);
});

test('the side it tells is right at any gain that is not flat out', () => {
  for (const gainDb of [20, 32, 50, 70]) {
    const { near, across } = twoSides({ ...wires.start, gainDb });
    expect(near.driveDb - across.driveDb).toBeGreaterThan(10);
  }
});
