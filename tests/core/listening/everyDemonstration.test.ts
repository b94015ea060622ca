import { expect, test } from 'vitest';
import { heardAt, heardRound } from '../../../src/core/listening/air';
import { DEMONSTRATIONS } from '../../../src/core/listening/catalogue';
import type { Demonstration } from '../../../src/core/listening/demonstration';
import { changed, dialsOf, otherWay, wayOf } from '../../../src/core/listening/demonstrationDials';
import { readSettings, type Settings, settingsText } from '../../../src/core/listening/settings';
import { randomFor } from '../../../src/core/random/draw';

const all = DEMONSTRATIONS.map((demonstration) => [demonstration.title, demonstration] as const);
const listenedAt = (demonstration: Demonstration, settings: Settings) => {
  const air = demonstration.air(settings);
  return { air, settings, now: heardAt(air, settings, settings.headingDeg), ring: heardRound(air, settings) };
};
const numbersOf = (value: unknown): number[] =>
  typeof value === 'number' ? [value] : value && typeof value === 'object' ? Object.values(value).flatMap(numbersOf) : [];

test('there are eleven, each with an address of its own', () => {
  expect(new Set(DEMONSTRATIONS.map(({ id }) => id)).size).toBe(11);
});

test.each(all)('%s: both ways, every end of every dial: words, picture and chart without a NaN', (_title, demonstration) => {
  const ends = dialsOf(demonstration).flatMap(({ key, from, to }) => [{ [key]: from }, { [key]: to }]);
  for (const by of [...demonstration.ways.map(({ sets }) => sets), ...ends]) {
    const listened = listenedAt(demonstration, changed(demonstration, demonstration.start, by));
    const words = demonstration
      .says(listened)
      .map((piece) => (typeof piece === 'string' ? piece : piece.strong))
      .join('');
    expect(words).not.toMatch(/NaN|undefined|Infinity|null/);
    expect(words.length).toBeLessThan(190);
    for (const drawn of [demonstration.picture(listened), demonstration.chart(listened)])
      for (const number of numbersOf(drawn)) expect(Number.isFinite(number)).toBe(true);
  }
});

test.each(all)('%s: the two ways lead to one another, and to different sounds', (_title, demonstration) => {
  const [first, second] = demonstration.ways.map(({ sets }) => changed(demonstration, demonstration.start, sets)) as [Settings, Settings];
  expect([wayOf(demonstration, first), wayOf(demonstration, second)]).toEqual([0, 1]);
  expect([otherWay(demonstration, first), otherWay(demonstration, second)]).toEqual([1, 0]);
  const levels = (settings: Settings) => listenedAt(demonstration, settings).ring.map(({ levelDb }) => levelDb.toFixed(1));
  expect(levels(first)).not.toEqual(levels(second));
});

test.each(all)('%s: its address brings its settings back', (_title, demonstration) => {
  const random = randomFor(`address-${demonstration.id}`, 'test');
  const dials = dialsOf(demonstration);
  const drawn = Object.fromEntries(dials.map(({ key, from, to }) => [key, from + (to - from) * random()]));
  const settings = changed(demonstration, demonstration.start, drawn);
  expect(readSettings(settingsText(settings, demonstration.start), demonstration.start, dials)).toEqual(settings);
  expect(readSettings('gainDb=1e9&choice=zebra&walkM=&nothing=3', demonstration.start, dials).gainDb).toBe(90);
});

test.each(all)('%s: three questions, whose answers are what is heard and differ between draws', (_title, demonstration) => {
  const answers = new Set<string>();
  for (let seed = 0; seed < 12; seed++) {
    const questions = demonstration.questions(randomFor(`questions-${seed}`, 'test'));
    expect(questions).toHaveLength(3);
    for (const { answer, choices, takes, because } of questions) {
      expect(choices[answer]).toBeDefined();
      expect(takes.length).toBeGreaterThan(0);
      expect(because).not.toMatch(/NaN|undefined|Infinity/);
    }
    answers.add(questions.map(({ answer }) => answer).join());
  }
  expect(answers.size).toBeGreaterThan(1);
});
