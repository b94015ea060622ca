import { expect, test } from 'vitest';
import { bounce, sidesDeg } from '../../../src/core/listening/bounce';
import { turnDeg, wrapBearingDeg } from '../../../src/core/units/angles';
import { sampledBeep } from './sampledBeep';

const [before, after] = [0, 100].map((walkM) => sidesDeg({ ...bounce.start, walkM })) as [
  ReturnType<typeof sidesDeg>,
  ReturnType<typeof sidesDeg>,
];
const loudAt = (walkM: number, deg: number, choice = 0) =>
  sampledBeep(bounce, { walkM, choice, headingDeg: Math.round(wrapBearingDeg(deg)) }).beepDb;

test('100 m on, the hillside has swung by more than 20 degrees and the transmitter by less than 12', () => {
  expect(Math.abs(turnDeg(before.falseDeg!, after.falseDeg!))).toBeGreaterThan(20);
  expect(Math.abs(turnDeg(before.trueDeg!, after.trueDeg!))).toBeLessThan(12);
});

test('in the samples the hillside is as loud as the transmitter, within 4 dB at both places', () => {
  for (const [walkM, sides] of [
    [0, before],
    [100, after],
  ] as const)
    expect(Math.abs(loudAt(walkM, sides.falseDeg!) - loudAt(walkM, sides.trueDeg!))).toBeLessThan(4);
});

test('with the hillside taken away its side is more than 10 dB softer', () => {
  expect(loudAt(100, after.falseDeg!) - loudAt(100, after.falseDeg!, 1)).toBeGreaterThan(10);
});
