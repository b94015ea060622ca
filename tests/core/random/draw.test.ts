import { expect, test } from 'vitest';
import { randomFor } from '../../../src/core/random/draw';

test('the same seed, purpose and index give the same numbers, whatever else was drawn', () => {
  const first = randomFor('fell', 'terrain', 3);
  const numbers = [first(), first(), first()];
  randomFor('fell', 'cover', 3)();
  const again = randomFor('fell', 'terrain', 3);
  expect([again(), again(), again()]).toEqual(numbers);
});

test('another purpose, index or seed gives other numbers in [0, 1)', () => {
  const draws = [
    randomFor('fell', 'terrain'),
    randomFor('fell', 'cover'),
    randomFor('fell', 'terrain', 1),
    randomFor('moss', 'terrain'),
  ].map((draw) => draw());
  expect(new Set(draws).size).toBe(4);
  for (const draw of draws) expect(draw >= 0 && draw < 1).toBe(true);
});
