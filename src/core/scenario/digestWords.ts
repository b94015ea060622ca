import { SPOKEN_WORDS } from './spokenWords';

/** Bytes of the digest that are read out: two different exercises agree by chance once in 4 thousand million times. */
const BYTES = 4;

/**
 * The first four bytes of a digest as words that people read out to see that they have the same exercise.
 * @throws RangeError unless `digest` is 64 hex digits
 */
export function wordsOfDigest(digest: string): string {
  if (!/^[0-9a-f]{64}$/.test(digest)) throw new RangeError(`need 64 hex digits, got "${digest.slice(0, 80)}"`);
  return Array.from({ length: BYTES }, (_, i) => SPOKEN_WORDS[Number.parseInt(digest.slice(2 * i, 2 * i + 2), 16)]!).join(' ');
}
