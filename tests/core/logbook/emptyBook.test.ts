import { expect, test } from 'vitest';
import { backupIsDue, blindTestsIn, emptyBook, mergedBooks, practiceDays, withRecord } from '../../../src/core/logbook/book';
import type { BlindRecord } from '../../../src/core/logbook/record';
import { onDay, sessionOn } from './handmadeBook';

const bounded = (value: number) => ({ value, low: value - 1, high: value + 1 });
const blind: BlindRecord = {
  kind: 'blind',
  id: 'b1',
  atMs: 1,
  day: onDay(0),
  result: { places: 30, wrongSide: 0, sdDeg: bounded(4), biasDeg: bounded(0) },
};

test('an empty book asks for nothing, and laid to another adds nothing', () => {
  expect(practiceDays(emptyBook())).toEqual([]);
  expect(backupIsDue(emptyBook())).toBe(false);
  const one = [sessionOn(onDay(0), 'how-far')];
  expect(mergedBooks(emptyBook(), one)).toEqual(one);
});

test('blind tests are found among other entries', () => {
  const book = withRecord(withRecord(emptyBook(), sessionOn(onDay(0), 'how-far')), blind);
  expect(blindTestsIn(book)).toEqual([blind]);
});
