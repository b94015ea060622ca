import { expect, test } from 'vitest';
import { changesInWords } from '../../src/browser/ground/spokenWords';
import { taskWords } from '../../src/browser/taskWords';
import { begin } from '../../src/core/run/begin';
import { plainScenario } from '../core/world/fixtureScenario';

const limited = plainScenario({ limits: { walkM: 100 } });

test('what is left is said once as it falls under a round figure', () => {
  const state = begin(limited);
  const said = (fromM: number, toM: number) =>
    changesInWords({ ...state, walkedM: fromM }, { ...state, walkedM: toM }, { compass: true }, 600);
  expect(said(90, 101)).toEqual(['500 metres of walking left']);
  expect(said(101, 140)).toEqual([]);
  expect(changesInWords(state, { ...state, walkedM: 590 }, { compass: true })).toEqual([]);
  expect(taskWords(limited)).toBe('You may walk 100 m, no more.');
});
