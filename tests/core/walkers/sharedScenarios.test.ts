import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { openExercise } from '../../../src/core/run/exercise';
import { loadScenario } from '../../../src/core/scenario/load';
import { playWalker } from '../../../src/core/walkers/play';
import { steady } from '../../../src/core/walkers/steady';

const shared = readdirSync('scenarios').filter((name) => name.endsWith('.json') && !name.endsWith('schema.json'));

test('six exercises are shared', () => {
  expect(shared.length).toBeGreaterThanOrEqual(6);
});

test.each(shared)(
  'the steady walker finds the tag of %s from sound and map alone, within the exercise’s time',
  (name) => {
    const scenario = loadScenario(name, readFileSync(`scenarios/${name}`, 'utf8'));
    const { state } = playWalker(openExercise(scenario), steady, 1);
    expect(state.ending).toBe('found');
  },
  240_000,
);
