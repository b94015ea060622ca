import { expect, test } from 'vitest';
import {
  BEEP_MS,
  BEEPS_A_ROW,
  type Given,
  isChecked,
  nextLevelDb,
  quietLevelDb,
  ROWS,
  thresholdFrom,
  verdictOf,
} from '../../../src/core/drills/hearingCheck';
import { listenerNow } from '../../../src/core/drills/listenerNow';
import { detectionChance } from '../../../src/core/ear/detection';
import { innerNoiseDb } from '../../../src/core/ear/loudness';
import { randomFor } from '../../../src/core/random/draw';

/** Somebody with a threshold, who says yes to silence now and then. */
function checked(thresholdDb: number, seed: string, falseAlarm = 0.02): readonly Given[] {
  const random = randomFor(seed, 'test');
  const given: Given[] = [];
  while (!isChecked(given)) {
    const levelDb = nextLevelDb(given);
    const chance =
      levelDb === null
        ? falseAlarm
        : Math.max(falseAlarm, detectionChance(levelDb - innerNoiseDb({ thresholdDb }, BEEP_MS), BEEP_MS, BEEPS_A_ROW));
    given.push({ levelDb, heard: random() < chance });
  }
  return given;
}

test.each([-20, -8, 0, 10, 25])(
  'a listener %i dB over the usual threshold is found, SD at most 2 dB and bias at most 1 dB',
  (thresholdDb) => {
    const found = Array.from({ length: 60 }, (_, i) => thresholdFrom(checked(thresholdDb, `check-${thresholdDb}-${i}`)).thresholdDb);
    const mean = found.reduce((sum, value) => sum + value, 0) / found.length;
    expect(Math.abs(mean - thresholdDb)).toBeLessThan(1);
    expect(Math.sqrt(found.reduce((sum, value) => sum + (value - mean) ** 2, 0) / found.length)).toBeLessThan(2);
  },
);

test('sixteen rows, three of them silent, the first plainly heard', () => {
  const given = checked(0, 'rows');
  expect(given).toHaveLength(ROWS);
  expect(given.filter(({ levelDb }) => levelDb === null)).toHaveLength(3);
  expect(given[0]!.levelDb! - quietLevelDb(0)).toBeGreaterThan(20);
});

test('one who says yes to everything guessed, one who hears nothing is told so', () => {
  expect(verdictOf(checked(0, 'fair'))).toBe('sound');
  expect(verdictOf(checked(0, 'yes', 1))).toBe('guessed');
  expect(verdictOf(checked(200, 'no', 0))).toBe('not heard');
});

test('the check holds for its own loudspeaker; 6 dB of volume move the threshold with them, more ask for a new check', () => {
  const check = { device: 'Headphones', volumeDb: -12, thresholdDb: 4, checkedAt: '2031-05-01T10:00:00Z' };
  const newer = { ...check, thresholdDb: 6, checkedAt: '2031-05-02T10:00:00Z' };
  expect(listenerNow([], '', -12)).toEqual({ listener: { thresholdDb: 0 }, checkedAt: null, due: true });
  expect(listenerNow([check], 'Loudspeaker', -12).due).toBe(true);
  expect(listenerNow([newer, check], 'Headphones', -12)).toEqual({ listener: { thresholdDb: 6 }, checkedAt: newer.checkedAt, due: false });
  expect(listenerNow([check], 'Headphones', -18)).toMatchObject({ listener: { thresholdDb: 10 }, due: false });
  expect(listenerNow([check], 'Headphones', -3)).toMatchObject({ listener: { thresholdDb: -5 }, due: true });
});
