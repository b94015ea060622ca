import { expect, test } from 'vitest';
import { blankExercise } from '../../../src/core/desk/blankExercise';
import { changed, historyFrom, historyOf, keptHistory, nextDeeds, redone, settled, undone } from '../../../src/core/desk/history';
import { randomFor } from '../../../src/core/random/draw';
import type { Scenario } from '../../../src/core/scenario/schema';
import { canonicalText } from '../../../src/core/scenario/seal';
import { plainScenario } from '../world/fixtureScenario';
import { randomEdit } from './randomEdit';

const EDITS = 1_000;

/** Frozen all through: an edit that wrote into the exercise it was given would throw. */
function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(frozen);
  }
  return value;
}

function edited(start: Scenario, seed: string) {
  const random = randomFor(seed, 'walk');
  let history = historyOf(frozen(start));
  const texts = [canonicalText(start)];
  while (texts.length <= EDITS) {
    const { value, deed, joins } = randomEdit(history.now, random);
    const text = canonicalText(value);
    if (text === texts.at(-1)) continue; // nothing was changed
    history = changed(settled(history), frozen(value), deed, joins);
    texts.push(text);
  }
  return { history, texts };
}

test.each(['a', 'b', 'c'])(
  '1,000 random edits (%s) undone one by one give every text before, down to the first; done again, the last',
  (seed) => {
    const start = seed === 'a' ? blankExercise('fresh') : plainScenario();
    const { history, texts } = edited(start, `desk-${seed}`);
    expect(new Set(texts).size).toBeGreaterThan(900);
    let at = history;
    for (let i = EDITS; i >= 0; i--) {
      expect(canonicalText(at.now)).toBe(texts[i]);
      at = undone(at);
    }
    expect(nextDeeds(at).undo).toBeNull();
    expect(canonicalText(at.now)).toBe(canonicalText(start));
    for (let i = 1; i <= EDITS; i++) {
      at = redone(at);
      expect(canonicalText(at.now)).toBe(texts[i]);
    }
    expect(nextDeeds(at).redo).toBeNull();
    expect(at.now).toBe(history.now);
  },
);

test('a history half undone, kept as lists, copied and read again, goes both ways as before', () => {
  const { history, texts } = edited(plainScenario(), 'desk-kept');
  let at = history;
  for (let i = 0; i < 400; i++) at = undone(at);
  let read = historyFrom(structuredClone(keptHistory(at)));
  expect(nextDeeds(read)).toEqual(nextDeeds(at));
  for (let i = 0; i < 400; i++) read = redone(read);
  expect(canonicalText(read.now)).toBe(texts[EDITS]);
  for (let i = 0; i < EDITS; i++) read = undone(read);
  expect(canonicalText(read.now)).toBe(texts[0]);
});

test('a slider drawn along is one step; let go of and drawn again it is two', () => {
  let at = historyOf(0);
  for (const value of [1, 2, 3]) at = changed(at, value, 'slider', 'slider');
  expect(undone(at).now).toBe(0);
  at = changed(settled(at), 9, 'slider', 'slider');
  expect(undone(at).now).toBe(3);
  expect(undone(undone(at)).now).toBe(0);
});

test('after an undo the same slider begins a new step, and what was undone is gone with any change', () => {
  let at = changed(changed(historyOf(0), 1, 'slider', 'slider'), 2, 'other');
  at = undone(at);
  expect(nextDeeds(at)).toEqual({ undo: 'slider', redo: 'other' });
  at = changed(at, 5, 'slider', 'slider');
  expect(nextDeeds(at).redo).toBeNull();
  expect(undone(at).now).toBe(1);
});
