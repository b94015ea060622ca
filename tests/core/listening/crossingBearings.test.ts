import { expect, test } from 'vitest';
import { areaHa, crossingBearings, fixErrorM, fixOf } from '../../../src/core/listening/crossingBearings';
import { sampledBeep } from './sampledBeep';

const at = (choice: number, walkM: number) => ({ ...crossingBearings.start, choice, walkM });

test('well-spread stations cross on the transmitter within 3 m', () => {
  for (const choice of [0, 1, 2]) expect(fixErrorM(at(choice, 90))!).toBeLessThan(3);
});

test('two stations 30 degrees apart leave 2 times the area of two 90 apart; four well spread leave less than two thirds', () => {
  expect(areaHa(fixOf(at(0, 30)))! / areaHa(fixOf(at(0, 90)))!).toBeCloseTo(2, 1); // 1/sin of the crossing angle
  expect(areaHa(fixOf(at(2, 120)))!).toBeLessThan((2 / 3) * areaHa(fixOf(at(0, 120)))!);
});

test('under 20 degrees there is no fix, and the reason is said', () => {
  const fix = fixOf(at(0, 10));
  expect(fix.ok).toBe(false);
  if (!fix.ok) expect(fix.reason).toContain('degrees');
});

test('at the last station the bearing to the transmitter is the loudest heading in the samples', () => {
  const beep = (headingDeg: number) => sampledBeep(crossingBearings, { choice: 1, walkM: 90, headingDeg }).beepDb;
  expect(beep(45)).toBeGreaterThan(beep(10));
  expect(beep(45)).toBeGreaterThan(beep(80));
});
