import { randomFor } from '../random/draw';

/** Numbers of one drawn situation, in the order they are asked for. */
export type Drawn = {
  readonly between: (least: number, most: number) => number;
  /** The same with every doubling as likely. */
  readonly scaled: (least: number, most: number) => number;
  readonly bearingDeg: () => number;
  readonly oneOf: <T>(items: readonly T[]) => T;
  /** -1 or 1. */
  readonly side: () => -1 | 1;
};

export function drawn(seed: string, attempt = 0): Drawn {
  const random = randomFor(seed, 'draw', attempt);
  const between = (least: number, most: number) => least + (most - least) * random();
  return {
    between,
    scaled: (least, most) => least * (most / least) ** random(),
    bearingDeg: () => Math.floor(360 * random()),
    oneOf: (items) => items[Math.min(items.length - 1, Math.floor(random() * items.length))]!,
    side: () => (random() < 0.5 ? -1 : 1),
  };
}

/** Where a falling or rising function of one variable reaches a value, to 1/2^`halvings` of the range; an end where it never does. */
export function whereReaches(value: number, from: number, to: number, of: (x: number) => number, halvings = 10): number {
  const rising = of(to) > of(from);
  let [low, high] = [from, to];
  for (let i = 0; i < halvings; i++) {
    const middle = (low + high) / 2;
    if (of(middle) < value === rising) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
