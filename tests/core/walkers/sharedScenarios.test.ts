import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { openExercise } from '../../../src/core/run/exercise';
import { timeS } from '../../../src/core/run/state';
import { loadScenario } from '../../../src/core/scenario/load';
import { LESSONS } from '../../../src/core/scenario/schema';
import { playWalker } from '../../../src/core/walkers/play';
import { steady } from '../../../src/core/walkers/steady';

const shared = readdirSync('scenarios')
  .filter((name) => name.endsWith('.json') && !name.endsWith('schema.json'))
  .map((name) => ({ name, ...loadScenario(name, readFileSync(`scenarios/${name}`, 'utf8')) }));

test('24 exercises or more are shared, two or more in the ladder of each lesson, of all five levels, each with par, brief and cautions', () => {
  expect(shared.length).toBeGreaterThanOrEqual(24);
  for (const lesson of LESSONS) expect(shared.filter((one) => one.lesson === lesson).length, lesson).toBeGreaterThanOrEqual(2);
  expect(new Set(shared.map(({ level }) => level)).size).toBe(5);
  expect(new Set(shared.map(({ title }) => title)).size).toBe(shared.length);
  for (const { name, brief, cautions, parS, limits } of shared) {
    expect(brief.length, name).toBeGreaterThan(60);
    expect(cautions, name).toContain('hearing');
    expect(parS, name).toBeGreaterThan(60);
    expect(parS, name).toBeLessThan(limits.timeS);
  }
});

test('within a ladder a higher level has the longer par', () => {
  for (const lesson of LESSONS) {
    const ladder = shared.filter((one) => one.lesson === lesson).sort((a, b) => a.level - b.level);
    for (const [i, { name, level, parS }] of ladder.entries()) {
      const below = ladder.slice(0, i).filter((one) => one.level < level);
      for (const lower of below) expect(parS, `${name} against ${lower.name}`).toBeGreaterThan(lower.parS!);
    }
  }
});

/** Made by hand, not drawn: nobody rehearsed them before they were written down. */
const HANDMADE = ['ashgill-wood', 'farmyard', 'line-across-the-valley', 'open-fell', 'two-ridges', 'wandering-tag'];

test.each(HANDMADE)(
  'the steady walker finds the tag of %s from sound and map alone, within the exercise’s time',
  (name) => {
    const scenario = loadScenario(name, readFileSync(`scenarios/${name}.json`, 'utf8'));
    const { state } = playWalker(openExercise(scenario), steady, 1);
    expect(state.ending).toBe('found');
  },
  240_000,
);

test('the par of The sheepfold is what three rehearsals of the steady walker take in the middle, to 10 %', () => {
  const scenario = loadScenario('fold', readFileSync('scenarios/the-sheepfold.json', 'utf8'));
  const exercise = openExercise(scenario);
  const timesS = [1, 2, 3].map((seed) => timeS(playWalker(exercise, steady, seed).state)).sort((a, b) => a - b);
  expect(Math.abs(timesS[1]! - scenario.parS!)).toBeLessThan(0.1 * scenario.parS!);
});
