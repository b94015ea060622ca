import { FILL_FALL, fillPits } from './fillPits';

/** Where water runs: pits filled, the cell each cell drains to, and how many cells drain through it. Row-major grids, flat arrays. */
export type Drainage = {
  /** Heights with every pit filled: each cell but the outlets has a lower neighbour. */
  readonly filledM: Float64Array;
  /** Index of the steepest lower neighbour; an outlet drains to itself. */
  readonly receiver: Int32Array;
  /** All cells, each one after the cell it drains to. */
  readonly downstreamFirst: Int32Array;
  /** Cells drained through each cell, itself included. */
  readonly area: Float64Array;
};

const DIAGONAL = 1 / Math.sqrt(2);

/** Index of the steepest lower neighbour, of equal ones the first; the cell itself where none is lower. Not for the rim, which lacks neighbours. */
export function steepestBelow(filled: Float64Array, cell: number, columns: number): number {
  const h = filled[cell]!;
  let to = cell;
  let steepest = 0;
  let drop = h - filled[cell + 1]!;
  if (drop > steepest) [steepest, to] = [drop, cell + 1];
  drop = h - filled[cell - 1]!;
  if (drop > steepest) [steepest, to] = [drop, cell - 1];
  drop = h - filled[cell + columns]!;
  if (drop > steepest) [steepest, to] = [drop, cell + columns];
  drop = h - filled[cell - columns]!;
  if (drop > steepest) [steepest, to] = [drop, cell - columns];
  drop = (h - filled[cell + columns + 1]!) * DIAGONAL;
  if (drop > steepest) [steepest, to] = [drop, cell + columns + 1];
  drop = (h - filled[cell - columns + 1]!) * DIAGONAL;
  if (drop > steepest) [steepest, to] = [drop, cell - columns + 1];
  drop = (h - filled[cell + columns - 1]!) * DIAGONAL;
  if (drop > steepest) [steepest, to] = [drop, cell + columns - 1];
  drop = (h - filled[cell - columns - 1]!) * DIAGONAL;
  return drop > steepest ? cell - columns - 1 : to;
}

/** Fills the pits of `heights`, then finds the water's ways. Parameters as for `fillPits`. */
export function drain(heights: Float64Array, columns: number, isOutlet: Uint8Array, fall = FILL_FALL): Drainage {
  const filledM = fillPits(heights, columns, isOutlet, fall);
  const count = filledM.length;
  const receiver = new Int32Array(count);
  const donors = new Int8Array(count);
  for (let cell = 0; cell < count; cell++) {
    const to = isOutlet[cell] === 0 ? steepestBelow(filledM, cell, columns) : cell;
    receiver[cell] = to;
    if (to !== cell) donors[to]! += 1;
  }
  return { filledM, receiver, ...gather(receiver, donors) };
}

/** Follows each source down for as long as all water from above has come; the order turned round is downstream first. Uses up `donors`. */
function gather(receiver: Int32Array, donors: Int8Array): Pick<Drainage, 'downstreamFirst' | 'area'> {
  const count = receiver.length;
  const downstreamFirst = new Int32Array(count);
  const area = new Float64Array(count).fill(1);
  let end = count;
  for (let source = 0; source < count; source++) {
    for (let cell = source; donors[cell] === 0; ) {
      donors[cell] = -1;
      downstreamFirst[--end] = cell;
      const to = receiver[cell]!;
      if (to === cell) break;
      area[to]! += area[cell]!;
      donors[to]! -= 1;
      cell = to;
    }
  }
  return { downstreamFirst, area };
}

/** 1 on the rim of the grid. */
export function rimOf(columns: number, rows: number): Uint8Array {
  const rim = new Uint8Array(columns * rows);
  for (let column = 0; column < columns; column++) rim[column] = rim[(rows - 1) * columns + column] = 1;
  for (let row = 0; row < rows; row++) rim[row * columns] = rim[row * columns + columns - 1] = 1;
  return rim;
}
