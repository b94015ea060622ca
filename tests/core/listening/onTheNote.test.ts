import { expect, test } from 'vitest';
import { driftHz, onTheNote } from '../../../src/core/listening/onTheNote';
import { sampledBeep } from './sampledBeep';

const at = (offsetHz: number, choice = 0) => sampledBeep(onTheNote, { offsetHz, choice, headingDeg: 0 });

test('turning the dial moves the pitch: 1 kHz up doubles the zero crossings', () => {
  expect(at(1_000).zeroCrossings / at(0).zeroCrossings).toBeCloseTo(2, 0);
});

test('at the edge of the passband the beep falls away: 2.5 kHz off costs more than 25 dB in the samples', () => {
  expect(at(0).beepDb - at(2_500).beepDb).toBeGreaterThan(25);
  expect(at(2_500).heard.audible).toBe(false);
});

test('frost moves the crystal by 7.4 parts in a million and takes the note out of the passband', () => {
  expect(driftHz(-15) / 150.1).toBeCloseTo(-7.4, 1); // (−42)³ times 1e-10, the AT-cut's cubic, value from memory
  expect(at(0, 2).heard.audible).toBe(false);
  expect(at(1_100, 2).heard.audible).toBe(true);
});
