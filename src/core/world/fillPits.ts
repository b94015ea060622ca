const BUCKETS = 16_384;
/** Stands for a cell that has been reached, or that lies outside the grid: the only class with its highest bit set. */
const REACHED = 65_535;
const REACHED_BIT = 15;
/** Fall kept across filled ground, metres a cell. */
export const FILL_FALL = 0.004;

/**
 * Fills pits, so that each cell but the outlets has a lower neighbour: from the outlets inward, lowest first
 * (priority flood with a falling fill: Barnes, Lehman and Mulla 2014). Heights are taken in `BUCKETS` classes, each a
 * first-in-first-out list threaded through `next`, so the fill may stand one class too high, never too low.
 *
 * Hot: every height in the map goes through it once per round of weathering; `tests/bench/worlds.ts` holds it. So it keeps its
 * arrays for the next grid of the same size, and the flood reads the classes, which stay in the processor's cache, and looks at
 * heights only where a neighbour's class is so low that it may have to be raised. Most neighbours of a cell have been reached
 * before, in no pattern that a processor could guess: so the open ones are found as bits, not by eight branches.
 */
export class PitFiller {
  /** Heights with every pit filled, once `fill` has been called. */
  readonly filled: Float64Array;
  private readonly count: number;
  private readonly columns: number;
  /** Class of each cell that the flood has not reached yet, a row and a cell of margin before and after. */
  private readonly classes: Uint16Array;
  /** The cell after each cell in its list, -1 at the end; after the cells, the first of each list. */
  private readonly next: Int32Array;
  /** Where in `next` each list ends. */
  private readonly last = new Int32Array(BUCKETS);
  /** For each set of open neighbours, as bits, the step to the first of them. */
  private readonly firstStep: Int32Array;
  private low = 0;
  private perBucket = 0;
  private fall = 0;

  constructor(columns: number, rows: number) {
    this.columns = columns;
    this.count = columns * rows;
    this.filled = new Float64Array(this.count);
    this.classes = new Uint16Array(this.count + 2 * (columns + 1));
    this.next = new Int32Array(this.count + BUCKETS);
    const steps = [1, -1, columns, -columns, columns + 1, 1 - columns, columns - 1, -columns - 1];
    this.firstStep = Int32Array.from({ length: 256 }, (_, open) => steps.find((__, k) => ((open >> k) & 1) === 1) ?? 0);
  }

  /**
   * @param isOutlet 1 where water leaves: the whole rim of the grid, and the sea
   * @param fall least fall from cell to cell on filled ground, in the unit of `heights`
   * @returns the filled heights, good until the next call
   */
  fill(heights: Float64Array, isOutlet: Uint8Array, fall = FILL_FALL): Float64Array {
    const { count, columns, next, last } = this;
    this.setClasses(heights);
    this.filled.set(heights);
    this.fall = fall;
    next.fill(-1);
    for (let bucket = 0; bucket < BUCKETS; bucket++) last[bucket] = count + bucket;
    for (let rowAt = 0; rowAt < count; rowAt += columns) this.reachOutlets(rowAt, isOutlet);
    // A neighbour more classes higher than this cannot lie under a cell's height and the fall.
    const near = 1 + Math.ceil(fall * this.perBucket);
    for (let bucket = 0; bucket < BUCKETS; bucket++) if (next[count + bucket]! >= 0) this.empty(bucket, bucket + near);
    return this.filled;
  }

  private setClasses(heights: Float64Array): void {
    let low = heights[0]!;
    let high = low;
    for (let i = 1; i < heights.length; i++) {
      const h = heights[i]!;
      if (h < low) low = h;
      if (h > high) high = h;
    }
    const perBucket = (BUCKETS - 1) / (high - low > 0 ? high - low : 1);
    const { classes, columns } = this;
    classes.fill(REACHED);
    for (let i = 0; i < heights.length; i++) classes[i + columns + 1] = (heights[i]! - low) * perBucket;
    this.low = low;
    this.perBucket = perBucket;
  }

  private reachOutlets(rowAt: number, isOutlet: Uint8Array): void {
    const { columns, classes, next, last } = this;
    for (let cell = rowAt; cell < rowAt + columns; cell++) {
      if (isOutlet[cell] === 0) continue;
      const bucket = classes[cell + columns + 1]!;
      classes[cell + columns + 1] = REACHED;
      next[last[bucket]!] = cell;
      last[bucket] = cell;
    }
  }

  /** Reaches the neighbours of all cells of a class, those that come into it meanwhile too. @param near classes up to this may need raising */
  private empty(bucket: number, near: number): void {
    const { count, columns, classes, next, last, firstStep } = this;
    const margin = columns + 1;
    for (let cell = next[count + bucket]!; cell >= 0; cell = next[cell]!) {
      const here = cell + margin;
      let open =
        0xff ^
        ((classes[here + 1]! >>> REACHED_BIT) |
          ((classes[here - 1]! >>> REACHED_BIT) << 1) |
          ((classes[here + columns]! >>> REACHED_BIT) << 2) |
          ((classes[here - columns]! >>> REACHED_BIT) << 3) |
          ((classes[here + margin]! >>> REACHED_BIT) << 4) |
          ((classes[here - columns + 1]! >>> REACHED_BIT) << 5) |
          ((classes[here + columns - 1]! >>> REACHED_BIT) << 6) |
          ((classes[here - margin]! >>> REACHED_BIT) << 7));
      for (; open !== 0; open &= open - 1) {
        const other = cell + firstStep[open]!;
        let its = classes[other + margin]!;
        classes[other + margin] = REACHED;
        if (its <= near) its = this.raised(other, cell, its);
        next[last[its]!] = other;
        last[its] = other;
      }
    }
  }

  /** Raises a cell over the one it was reached from, if it must be. @returns the class it then has */
  private raised(cell: number, from: number, bucket: number): number {
    const least = this.filled[from]! + this.fall;
    if (this.filled[cell]! >= least) return bucket;
    this.filled[cell] = least;
    return Math.min(BUCKETS - 1, Math.floor((least - this.low) * this.perBucket));
  }
}
