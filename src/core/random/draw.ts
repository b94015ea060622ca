import seedrandom from 'seedrandom';

/** What a stream of random numbers is for. One purpose, one stream: a new draw for one purpose never moves another's. */
export type Purpose =
  | 'terrain'
  | 'cover'
  | 'water'
  | 'tracks'
  | 'buildings'
  | 'walls'
  | 'lines'
  | 'fading'
  | 'pulse'
  | 'judgement'
  | 'wander'
  | 'walk'
  | 'draw'
  | 'test';

/** A stream of numbers in [0, 1). Same arguments, same numbers, whatever else was drawn. */
export function randomFor(seed: string, purpose: Purpose, index = 0): () => number {
  return seedrandom.alea(`${seed}/${purpose}/${index}`);
}
