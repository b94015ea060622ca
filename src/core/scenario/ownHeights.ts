import { deflated, fromLetters, inflated, toLetters } from './packing';

/**
 * Heights of an exercise's own ground as they lie in its file: whole steps over the lowest point, each told as its difference from what
 * its neighbours let expect, packed. Row-major from the south-west corner, as every grid.
 */
export type OwnHeights = {
  /** Height of the lowest cell above sea level, metres. */
  readonly lowM: number;
  /** Metres of one step. */
  readonly stepM: number;
  readonly packed: string;
};

/** Most cells of an own ground: 10 km in cells of 10 m. */
export const MOST_OWN_CELLS = 1_000_000;
/** Steps that two bytes hold. */
const MOST_STEPS = 65_535;
const FINEST_M = 0.1;

/**
 * Packs heights in metres, `side` cells to a row. Rounded to 0.1 m, coarser only where more than 6,500 m lie between the lowest and the
 * highest. @throws RangeError for heights that are no numbers or not a square of cells
 */
export function packedHeights(heightsM: ArrayLike<number>, side: number): OwnHeights {
  if (heightsM.length !== side * side || side < 2 || heightsM.length > MOST_OWN_CELLS)
    throw new RangeError(`${heightsM.length} heights for ${side} cells a side`);
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < heightsM.length; i++) {
    const h = heightsM[i]!;
    if (!Number.isFinite(h)) throw new RangeError(`height ${h} at cell ${i}`);
    if (h < low) low = h;
    if (h > high) high = h;
  }
  const lowM = Math.floor(low / FINEST_M) / Math.round(1 / FINEST_M);
  const stepM = Math.max(FINEST_M, Math.ceil((high - lowM) / MOST_STEPS / FINEST_M) * FINEST_M);
  const steps = Uint16Array.from({ length: heightsM.length }, (_, i) => Math.round((heightsM[i]! - lowM) / stepM));
  const bytes = new Uint8Array(2 * steps.length);
  for (let i = 0; i < steps.length; i++) {
    // 16 bits go round: the difference comes back whatever it is
    const off = (steps[i]! - expected(steps, i, side)) & 0xffff;
    const folded = ((off << 1) ^ (off & 0x8000 ? 0xffff : 0)) & 0xffff;
    bytes[i] = folded & 0xff;
    bytes[steps.length + i] = folded >> 8;
  }
  return { lowM, stepM, packed: toLetters(deflated(bytes)) };
}

/** What west, south and south-west let expect: a plane through the three. */
function expected(steps: Uint16Array, i: number, side: number): number {
  const [isWest, isSouth] = [i % side === 0, i < side];
  if (isWest && isSouth) return 0;
  if (isSouth) return steps[i - 1]!;
  if (isWest) return steps[i - side]!;
  return steps[i - 1]! + steps[i - side]! - steps[i - side - 1]!;
}

/** Heights in metres of `side` cells to a row; what is wrong with the packing as a text. Never makes more room than the cells need. */
export function unpackedHeights({ lowM, stepM, packed }: OwnHeights, side: number): Float64Array | string {
  const cells = side * side;
  if (cells > MOST_OWN_CELLS) return `${cells} cells, more than the ${MOST_OWN_CELLS} of an own ground`;
  const letters = fromLetters(packed);
  if (!letters) return 'letters that no heights are packed in';
  const bytes = inflated(letters, 2 * cells);
  if (bytes === null) return 'packed heights that are cut off or changed';
  if (bytes === 'too much' || bytes.length !== 2 * cells) return `heights for another number of cells than ${side} by ${side}`;
  const steps = new Uint16Array(cells);
  const heightsM = new Float64Array(cells);
  for (let i = 0; i < cells; i++) {
    const folded = bytes[i]! | (bytes[cells + i]! << 8);
    const off = (folded >> 1) ^ (folded & 1 ? 0xffff : 0);
    steps[i] = (expected(steps, i, side) + off) & 0xffff;
    heightsM[i] = lowM + steps[i]! * stepM;
  }
  return heightsM;
}
