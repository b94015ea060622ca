import { expect, test } from 'vitest';
import { FEED_LINE_FLOOR_DB } from '../../../src/core/antenna/orientation';
import { axis, axisLoss } from '../../../src/core/listening/axis';
import { sampledBeep } from './sampledBeep';

const at = (choice: number, rollDeg: number) => sampledBeep(axis, { choice, rollDeg, headingDeg: 0 });

test('90 degrees off the axis cost the 20 dB of the feed line in the samples, upright and lying', () => {
  expect(at(0, 90).beepDb - at(0, 0).beepDb).toBeCloseTo(FEED_LINE_FLOOR_DB, 0);
  expect(at(2, 0).beepDb - at(2, 90).beepDb).toBeCloseTo(FEED_LINE_FLOOR_DB, 0);
});

test('half way between upright and flat costs 3 dB for an upright whip', () => {
  expect(Math.abs(at(0, 90).beepDb - at(0, 45).beepDb - 3)).toBeLessThan(0.2);
});

test('over open ground a lying whip is more than 10 dB weaker on its own axis than an upright one on its', () => {
  expect(at(0, 90).beepDb - at(2, 0).beepDb).toBeGreaterThan(10);
  expect(axisLoss({ ...axis.start, choice: 2 }, 0).bestRollDeg % 180).toBe(0);
});
