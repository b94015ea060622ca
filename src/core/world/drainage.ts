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

const BUCKETS = 16_384;
/** Fall kept across filled ground, metres a cell. */
const FILL_FALL = 0.004;

/** The eight neighbours as steps in column, row and index, straight ones first. */
const STEP_COLUMN = [1, -1, 0, 0, 1, 1, -1, -1] as const;
const STEP_ROW = [0, 0, 1, -1, 1, -1, 1, -1] as const;
const DIAGONAL = 1 / Math.sqrt(2);

const stepsOf = (columns: number): Int32Array => Int32Array.from(STEP_COLUMN, (column, k) => column + STEP_ROW[k]! * columns);

function staysInside(cell: number, k: number, columns: number, rows: number): boolean {
  const row = Math.floor(cell / columns);
  const c = cell - row * columns + STEP_COLUMN[k]!;
  const r = row + STEP_ROW[k]!;
  return c >= 0 && r >= 0 && c < columns && r < rows;
}

/**
 * Fills pits from the outlets inward, lowest first (priority flood with a falling fill: Barnes, Lehman and Mulla 2014).
 * Heights are taken in `BUCKETS` classes, so the fill may stand one class too high, never too low.
 * One long loop: every height in the map goes through it once per round of weathering.
 */
function fillPits(heights: Float64Array, columns: number, rows: number, isOutlet: Uint8Array, fall: number): Float64Array {
  const count = columns * rows;
  let low = heights[0]!;
  let high = low;
  for (let i = 1; i < count; i++) {
    const h = heights[i]!;
    if (h < low) low = h;
    if (h > high) high = h;
  }
  const perBucket = (BUCKETS - 1) / (high - low > 0 ? high - low : 1);
  const first = new Int32Array(BUCKETS).fill(-1);
  const last = new Int32Array(BUCKETS).fill(-1);
  const next = new Int32Array(count).fill(-1);
  const filled = Float64Array.from(heights);
  const seen = Uint8Array.from(isOutlet);
  const push = (cell: number): void => {
    const bucket = Math.min(BUCKETS - 1, Math.floor((filled[cell]! - low) * perBucket));
    if (first[bucket]! < 0) first[bucket] = cell;
    else next[last[bucket]!] = cell;
    last[bucket] = cell;
  };
  for (let i = 0; i < count; i++) if (seen[i]) push(i);
  const isRim = rimOf(columns, rows);
  const steps = stepsOf(columns);
  for (let bucket = 0; bucket < BUCKETS; bucket++) {
    for (let cell = first[bucket]!; cell >= 0; cell = next[cell]!) {
      const least = filled[cell]! + fall;
      const onRim = isRim[cell] === 1;
      for (let k = 0; k < 8; k++) {
        if (onRim && !staysInside(cell, k, columns, rows)) continue;
        const other = cell + steps[k]!;
        if (seen[other]) continue;
        seen[other] = 1;
        if (filled[other]! < least) filled[other] = least;
        push(other);
      }
    }
  }
  return filled;
}

/** The rim must be outlets: inside it every cell has eight neighbours. */
function steepestReceivers(filled: Float64Array, columns: number, rows: number, isOutlet: Uint8Array): Int32Array {
  const receiver = new Int32Array(columns * rows);
  const steps = stepsOf(columns);
  for (let cell = 0; cell < receiver.length; cell++) {
    receiver[cell] = cell;
    if (isOutlet[cell]) continue;
    const h = filled[cell]!;
    let steepest = 0;
    for (let k = 0; k < 8; k++) {
      const drop = (h - filled[cell + steps[k]!]!) * (k < 4 ? 1 : DIAGONAL);
      if (drop > steepest) {
        steepest = drop;
        receiver[cell] = cell + steps[k]!;
      }
    }
  }
  return receiver;
}

/** Peels the cells off from the sources down, then turns the order round. */
function orderOf(receiver: Int32Array): Int32Array {
  const count = receiver.length;
  const donors = new Int32Array(count);
  for (let i = 0; i < count; i++) if (receiver[i] !== i) donors[receiver[i]!]! += 1;
  const order = new Int32Array(count);
  let end = count;
  for (let i = 0; i < count; i++) if (donors[i] === 0) order[--end] = i;
  for (let at = count - 1; at >= 0; at--) {
    const to = receiver[order[at]!]!;
    if (to !== order[at] && --donors[to]! === 0) order[--end] = to;
  }
  return order;
}

/**
 * @param isOutlet 1 where water leaves: the whole rim of the grid, and the sea
 * @param fall least fall from cell to cell on filled ground, in the unit of `heights`
 */
export function drain(heights: Float64Array, columns: number, rows: number, isOutlet: Uint8Array, fall = FILL_FALL): Drainage {
  const filledM = fillPits(heights, columns, rows, isOutlet, fall);
  const receiver = steepestReceivers(filledM, columns, rows, isOutlet);
  const downstreamFirst = orderOf(receiver);
  const area = new Float64Array(heights.length).fill(1);
  for (let at = downstreamFirst.length - 1; at >= 0; at--) {
    const cell = downstreamFirst[at]!;
    if (receiver[cell] !== cell) area[receiver[cell]!]! += area[cell]!;
  }
  return { filledM, receiver, downstreamFirst, area };
}

/** 1 on the rim of the grid. */
export function rimOf(columns: number, rows: number): Uint8Array {
  const rim = new Uint8Array(columns * rows);
  for (let column = 0; column < columns; column++) rim[column] = rim[(rows - 1) * columns + column] = 1;
  for (let row = 0; row < rows; row++) rim[row * columns] = rim[row * columns + columns - 1] = 1;
  return rim;
}
