import { FILL_FALL, PitFiller } from './fillPits';

/** Land with its pits filled. Row-major grids, flat arrays. */
export type FilledLand = {
  /** Heights with every pit filled: each cell but the outlets has a lower neighbour. */
  readonly filledM: Float64Array;
  /** Index of the steepest lower neighbour; an outlet drains to itself; -1 where nobody has asked yet. */
  readonly receiver: Int32Array;
};

/** Where water runs: the cell each cell drains to, all of them known, and how many cells drain through it. */
export type Drainage = FilledLand & {
  /** All cells, each one after the cell it drains to. */
  readonly downstreamFirst: Int32Array;
  /** Cells drained through each cell, itself included. */
  readonly area: Int32Array;
};

const DIAGONAL = 1 / Math.sqrt(2);

/** Index of the steepest lower neighbour, of equal ones the first; the cell itself where none is lower. Not for the rim, which lacks neighbours. */
export function steepestBelow(filled: Float64Array, cell: number, columns: number): number {
  const h = filled[cell]!;
  let to = cell;
  let steepest = 0;
  let drop = h - filled[cell + 1]!;
  if (drop > steepest) {
    steepest = drop;
    to = cell + 1;
  }
  drop = h - filled[cell - 1]!;
  if (drop > steepest) {
    steepest = drop;
    to = cell - 1;
  }
  drop = h - filled[cell + columns]!;
  if (drop > steepest) {
    steepest = drop;
    to = cell + columns;
  }
  drop = h - filled[cell - columns]!;
  if (drop > steepest) {
    steepest = drop;
    to = cell - columns;
  }
  drop = (h - filled[cell + columns + 1]!) * DIAGONAL;
  if (drop > steepest) {
    steepest = drop;
    to = cell + columns + 1;
  }
  drop = (h - filled[cell - columns + 1]!) * DIAGONAL;
  if (drop > steepest) {
    steepest = drop;
    to = cell - columns + 1;
  }
  drop = (h - filled[cell + columns - 1]!) * DIAGONAL;
  if (drop > steepest) {
    steepest = drop;
    to = cell + columns - 1;
  }
  drop = (h - filled[cell - columns - 1]!) * DIAGONAL;
  return drop > steepest ? cell - columns - 1 : to;
}

/** Finds the water's ways on grids of one size; keeps its arrays for the next. */
export class Drainer {
  private readonly filler: PitFiller;
  private readonly donors: Int8Array;
  private readonly drainage: Drainage;

  constructor(
    private readonly columns: number,
    private readonly rows: number,
  ) {
    const count = columns * rows;
    this.filler = new PitFiller(columns, rows);
    this.donors = new Int8Array(count);
    const [receiver, downstreamFirst, area] = [new Int32Array(count), new Int32Array(count), new Int32Array(count)];
    this.drainage = { filledM: this.filler.filled, receiver, downstreamFirst, area };
  }

  /** Fills the pits of `heights`; no receiver is known yet. Parameters as for `PitFiller`; good until the next call. */
  fill(heights: Float64Array, isOutlet: Uint8Array, fall = FILL_FALL): FilledLand {
    this.filler.fill(heights, isOutlet, fall);
    this.drainage.receiver.fill(-1);
    return this.drainage;
  }

  /** Fills the pits of `heights`, then follows the water. Parameters as for `PitFiller`; good until the next call. */
  drain(heights: Float64Array, isOutlet: Uint8Array, fall = FILL_FALL): Drainage {
    this.filler.fill(heights, isOutlet, fall);
    this.donors.fill(0);
    this.drainage.area.fill(1);
    for (let row = 0; row < this.rows; row++) this.findReceivers(row * this.columns, isOutlet);
    this.gather();
    return this.drainage;
  }

  private findReceivers(rowAt: number, isOutlet: Uint8Array): void {
    const { columns, donors } = this;
    const { filledM, receiver } = this.drainage;
    for (let cell = rowAt; cell < rowAt + columns; cell++) {
      receiver[cell] = cell;
      if (isOutlet[cell] !== 0) continue;
      const to = steepestBelow(filledM, cell, columns);
      receiver[cell] = to;
      if (to !== cell) donors[to]! += 1;
    }
  }

  /** Follows each source down for as long as all water from above has come; the order turned round is downstream first. Uses up `donors`. */
  private gather(): void {
    const { donors } = this;
    let end = donors.length;
    for (let source = 0; source < donors.length; source++) if (donors[source] === 0) end = this.follow(source, end);
  }

  private follow(source: number, at: number): number {
    const { donors } = this;
    const { receiver, downstreamFirst, area } = this.drainage;
    let end = at;
    for (let cell = source; donors[cell] === 0; ) {
      donors[cell] = -1;
      downstreamFirst[--end] = cell;
      const to = receiver[cell]!;
      if (to === cell) break;
      area[to]! += area[cell]!;
      donors[to]! -= 1;
      cell = to;
    }
    return end;
  }
}

/** 1 on the rim of the grid. */
export function rimOf(columns: number, rows: number): Uint8Array {
  const rim = new Uint8Array(columns * rows);
  for (let column = 0; column < columns; column++) rim[column] = rim[(rows - 1) * columns + column] = 1;
  for (let row = 0; row < rows; row++) rim[row * columns] = rim[row * columns + columns - 1] = 1;
  return rim;
}
