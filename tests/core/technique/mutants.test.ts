import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { MUTANTS, timesFound } from '../../mutation/mutants';

test('every deliberate break of npm run mutation still applies to the code, at one place', () => {
  expect(MUTANTS.filter((mutant) => timesFound(mutant) !== 1).map(({ file, what }) => `${file}: ${what}`)).toEqual([]);
});

test('every break changes something, and each habit has six or more', () => {
  expect(MUTANTS.filter(({ find, put }) => find === put)).toEqual([]);
  for (const habit of ['quietGain', 'setThenSweep', 'walkAndListen', 'clearView', 'keepPractising'])
    expect(MUTANTS.filter((mutant) => mutant.habit === habit).length).toBeGreaterThanOrEqual(6);
});

test('the study page tells as many breaks as there are, and that each was noticed', () => {
  const page = readFileSync('assets/guide/validity.md', 'utf8');
  expect(page).toContain(`${MUTANTS.length} of ${MUTANTS.length} breaks make a test fail`);
});
