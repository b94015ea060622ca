import { beforeAll, expect, test } from 'vitest';
import { waveArrows } from '../../../src/core/debrief/lossBudget';
import { seesTag, surveyAt, surveyOrder, surveyPlace } from '../../../src/core/debrief/survey';
import { freeSpaceLossDb } from '../../../src/core/radio/freeSpace';
import { wholeLossDb } from '../../../src/core/radio/waveVector';
import { type Exercise, openExercise } from '../../../src/core/run/exercise';
import { turnDeg } from '../../../src/core/units/angles';
import { bearingDeg, distanceM } from '../../../src/core/units/frames';
import { openField } from '../walkers/openField';

let field: Exercise;
const TAG = { eM: 640, nM: 610 };
const NEAR = { eM: 560, nM: 560 };
const FAR = { eM: 120, nM: 150 };
const setting = { tag: 0, timeS: 0, gainDb: 30, attenuatorDb: 0 };

beforeAll(() => {
  field = openField();
});

test('10 dB more gain make a faint place 10 dB louder, and 11 m from the tag under 2 dB because the receiver is at its limit', () => {
  const gainDb = 10;
  const louder = (at: typeof NEAR) =>
    surveyAt(field, 'loudness', at, { ...setting, gainDb: gainDb + 10 })! - surveyAt(field, 'loudness', at, { ...setting, gainDb })!;
  expect(louder(FAR)).toBeCloseTo(10, 1);
  expect(louder({ eM: 630, nM: 605 })).toBeLessThan(2);
});

test('excess loss is what the place lost over free space: the budget of its strongest wave within 6 dB', () => {
  const strongest = waveArrows(field, 0, FAR, 1.7, 0)[0]!;
  const overFreeSpace = wholeLossDb(strongest.lossDb) - freeSpaceLossDb(distanceM(FAR, TAG), field.scenario.tags[0]!.frequencyMHz);
  expect(Math.abs(surveyAt(field, 'excess', FAR, setting)! - overFreeSpace)).toBeLessThan(6);
  expect(surveyAt(field, 'excess', FAR, setting)!).toBeGreaterThan(0);
});

test('openness is a share, and the apparent bearing of a tag in view is near the true one', () => {
  expect(surveyAt(field, 'openness', NEAR, setting)).toBeGreaterThan(0);
  expect(surveyAt(field, 'openness', NEAR, setting)).toBeLessThanOrEqual(1);
  expect(seesTag(field, NEAR, 0, TAG)).toBe(true);
  expect(surveyAt(field, 'apparent-bearing-error', NEAR, setting)).toBeLessThan(10);
});

test('arrows are sorted by power, within 25 dB of the strongest, and the direct one points at the tag', () => {
  const arrows = waveArrows(field, 0, FAR, 1.7, 0);
  const powers = arrows.map(({ powerDbm }) => powerDbm);
  expect(powers).toEqual([...powers].sort((a, b) => b - a));
  expect(powers[0]! - powers.at(-1)!).toBeLessThanOrEqual(25);
  expect(arrows.length).toBeLessThanOrEqual(12);
  const direct = arrows.find(({ kind }) => kind === 'direct')!;
  expect(Math.abs(turnDeg(direct.azimuthDeg, bearingDeg(FAR, TAG)))).toBeLessThan(0.01);
});

test('a survey visits every cell once, a coarse grid of every eighth first', () => {
  const order = surveyOrder(24);
  expect([...order].sort((a, b) => a - b)).toEqual([...Array(24 * 24).keys()]);
  expect([...order.subarray(0, 9)]).toEqual([0, 8, 16, 192, 200, 208, 384, 392, 400]);
  expect(surveyPlace(24, 1_200, 25)).toEqual({ eM: 75, nM: 75 });
});

test('an exercise opened again gives the same survey', () => {
  const again = openExercise(field.scenario, field.world);
  expect(surveyAt(again, 'excess', FAR, setting)).toBe(surveyAt(field, 'excess', FAR, setting));
});
