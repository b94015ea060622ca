import { expect, test } from 'vitest';
import { mergedBooks } from '../../../src/core/logbook/book';
import { weeksDose } from '../../../src/core/logbook/listeningDose';
import { onDay, runOn, sessionOn } from './handmadeBook';

const check = (thresholdDb: number) => ({
  kind: 'check' as const,
  id: `c${thresholdDb}`,
  atMs: 1e12,
  day: onDay(0),
  device: '',
  volumeDb: -12,
  thresholdDb,
});

test('an hour at the usual threshold is far below the limit: 62 dBA, 0.04 % of the week', () => {
  const book = mergedBooks([runOn(onDay(2), { minutes: 40 }), sessionOn(onDay(1), 'a', { seconds: 1_200 })], [check(0)]);
  const dose = weeksDose(book, onDay(3))!;
  expect(dose.hours).toBeCloseTo(1, 9);
  expect(dose.levelDba).toBeCloseTo(62, 9);
  // 1/40 of the hours at 80 dBA, and 18 dB less
  expect(dose.share).toBeCloseTo(10 ** -1.8 / 40, 5);
});

test('a threshold 20 dB lower is 20 dB more at the ear; what is older than a week does not count; no check, no estimate', () => {
  const book = mergedBooks([runOn(onDay(0), { minutes: 60 }), runOn(onDay(10), { minutes: 60 })], [check(-20)]);
  expect(weeksDose(book, onDay(12))).toMatchObject({ hours: 1, levelDba: 82 });
  expect(weeksDose([runOn(onDay(0))], onDay(0))).toBeNull();
});
