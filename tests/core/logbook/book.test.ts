import { expect, test } from 'vitest';
import { backupIsDue, checksIn, mergedBooks, notesIn, practiceDays, runsSinceBackup, withRecord } from '../../../src/core/logbook/book';
import { bookText, readBook } from '../../../src/core/logbook/bookFile';
import { addDays, dayNumber, dayOf, daysBetween } from '../../../src/core/logbook/day';
import { InputFaults } from '../../../src/core/scenario/faults';
import { drawnBook, onDay, runOn, sessionOn } from './handmadeBook';

const shuffled = <T>(items: readonly T[]): T[] =>
  [...items].sort((a, b) => (JSON.stringify(a).length % 7) - (JSON.stringify(b).length % 7));

test.each([...Array(25).keys()])('books %i: laid together they lose nothing, in any order, any number of times', (seed) => {
  const [a, b, c] = ['a', 'b', 'c'].map((name) => drawnBook(`${name}${seed}`, 30));
  const shared = a!.slice(0, 12);
  const left = mergedBooks(a!, [...shared, ...b!]);
  for (const record of [...a!, ...b!]) expect(left).toContainEqual(record);
  expect(left).toHaveLength(60);
  expect(mergedBooks([...shared, ...b!], a!)).toEqual(left);
  expect(mergedBooks(left, left)).toEqual(left);
  expect(mergedBooks(left, shuffled(a!))).toEqual(left);
  expect(mergedBooks(mergedBooks(a!, b!), c!)).toEqual(mergedBooks(a!, mergedBooks(b!, c!)));
});

test('two entries that share a name but differ: one of them is kept, the same whichever comes first', () => {
  const one = sessionOn(onDay(0), 'how-far');
  const other = { ...one, number: 9 };
  expect(mergedBooks([one], [other])).toEqual(mergedBooks([other], [one]));
});

test('a book comes back from its file as it was', () => {
  const book = mergedBooks(drawnBook('file', 80), []);
  expect(readBook('book.json', bookText(book))).toEqual(book);
});

test.each([
  ['not JSON', '{"format": ', 'not JSON'],
  ['a scenario', '{"format":"faintward-scenario","version":1,"records":[]}', 'book.json: format'],
  ['a newer book', '{"format":"faintward-logbook","version":2,"records":[]}', 'newer version of the program'],
  ['no day', bookText([sessionOn('2031-13-01', 'how-far')]), 'records.0.day: no day, found "2031-13-01". Mend: give a day as 2031-05-09'],
  ['an unknown entry', bookText([{ ...sessionOn(onDay(0), 'x'), kind: 'dream' } as never]), 'records.0.kind'],
  ['a share above 1', bookText([sessionOn(onDay(0), 'x', { rightShare: 7 })]), 'records.0.rightShare'],
] as const)('%s is refused with where and what to do', (_what, text, words) => {
  expect(() => readBook('book.json', text)).toThrow(InputFaults);
  expect(() => readBook('book.json', text)).toThrow(words);
});

test('notes: the newest words of a note hold, an empty one strikes it out', () => {
  const note = (id: string, atMs: number, which: string, text: string) => ({
    kind: 'note' as const,
    id,
    atMs,
    day: onDay(0),
    note: which,
    text,
  });
  const book = [note('1', 1e12, 'a', 'first'), note('2', 1e12 + 1, 'b', 'stays'), note('3', 1e12 + 2, 'a', 'second')];
  expect(notesIn(mergedBooks(book, [])).map(({ text }) => text)).toEqual(['second', 'stays'].reverse());
  expect(notesIn(withRecord(book, note('4', 1e12 + 3, 'a', ''))).map(({ text }) => text)).toEqual(['stays']);
});

test('the reminder to save the book comes with the fifth run since it was saved', () => {
  const runs = [0, 1, 2, 3, 4].map((day) => runOn(onDay(day)));
  expect(backupIsDue(mergedBooks(runs.slice(0, 4), []))).toBe(false);
  const five = mergedBooks(runs, []);
  expect(backupIsDue(five)).toBe(true);
  const saved = withRecord(five, { kind: 'backup', id: 'b', atMs: runs[4]!.atMs + 1, day: onDay(4) });
  expect(runsSinceBackup(saved)).toBe(0);
});

test('days of practice are those of drills and runs, each once', () => {
  const book = mergedBooks([sessionOn(onDay(2), 'x'), sessionOn(onDay(2), 'y'), runOn(onDay(0))], drawnBook('days', 0));
  expect(practiceDays(book)).toEqual([onDay(0), onDay(2)]);
  expect(checksIn(book)).toEqual([]);
});

test('days are counted over leap years, months and the end of a century, there and back', () => {
  expect(daysBetween('2028-02-28', '2028-03-01')).toBe(2);
  expect(daysBetween('2100-02-28', '2100-03-01')).toBe(1);
  expect(addDays('2031-12-31', 1)).toBe('2032-01-01');
  for (let number = dayNumber('1999-12-20'); number < dayNumber('2004-03-10'); number += 1) expect(dayNumber(dayOf(number))).toBe(number);
});
