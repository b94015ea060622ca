import { expect, test } from 'vitest';
import { wordsOfDigest } from '../../../src/core/scenario/digestWords';
import { digestOf } from '../../../src/core/scenario/seal';
import { SPOKEN_WORDS } from '../../../src/core/scenario/spokenWords';

/** Letters to add, leave out or change to come from one word to the other (Levenshtein). */
function lettersApart(a: string, b: string): number {
  let row = [...Array(b.length + 1).keys()];
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + Number(a[i - 1] !== b[j - 1])));
    row = next;
  }
  return row[b.length]!;
}

/** Roughly how a word sounds: its first letter and the consonants after it, those that sound alike made one. */
const sound = (word: string): string => {
  const plain = word
    .replace(/ph/g, 'f')
    .replace(/gh/g, '')
    .replace(/ck|c|q/g, 'k')
    .replace(/z/g, 's')
    .replace(/(.)\1+/g, '$1');
  return plain[0] + plain.slice(1).replace(/[aeiouyhw]/g, '');
};

test('there are 256 words, plain and short, no two nearer than three letters or alike in their consonants', () => {
  expect(SPOKEN_WORDS.length).toBe(256);
  for (const word of SPOKEN_WORDS) expect(word).toMatch(/^[a-z]{3,10}$/);
  expect(new Set(SPOKEN_WORDS.map(sound)).size).toBe(256);
  SPOKEN_WORDS.forEach((word, i) => {
    for (const other of SPOKEN_WORDS.slice(0, i)) expect(lettersApart(word, other), `${word} ${other}`).toBeGreaterThan(2);
  });
});

test('four words are read out, each of its byte; a digest that differs in one of them reads otherwise', () => {
  expect(wordsOfDigest(`0001feff${'0'.repeat(56)}`)).toBe(
    `${SPOKEN_WORDS[0]} ${SPOKEN_WORDS[1]} ${SPOKEN_WORDS[254]} ${SPOKEN_WORDS[255]}`,
  );
  const words = [...Array(2_000).keys()].map((i) => wordsOfDigest(digestOf({ i })));
  expect(new Set(words).size).toBe(2_000);
  expect(() => wordsOfDigest('0001')).toThrow(RangeError);
});

test('the words of a digest never change: people have them on paper', () => {
  expect(wordsOfDigest(digestOf('first given out'))).toBe('orange bluebell snowflake mirror');
});
