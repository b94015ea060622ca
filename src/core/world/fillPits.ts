const BUCKETS = 16_384;
/** Stands for a cell that has been reached, or that lies outside the grid. */
const REACHED = 65_535;
/** Fall kept across filled ground, metres a cell. */
export const FILL_FALL = 0.004;

/**
 * Fills pits, so that each cell but the outlets has a lower neighbour: from the outlets inward, lowest first
 * (priority flood with a falling fill: Barnes, Lehman and Mulla 2014). Heights are taken in `BUCKETS` classes, each a
 * first-in-first-out list threaded through `next`, so the fill may stand one class too high, never too low.
 *
 * Hot: every height in the map goes through it once per round of weathering; `tests/bench/worlds.ts` holds it. So it keeps its
 * arrays for the next grid of the same size, and the flood reads the classes, which stay in the processor's cache, and looks at
 * heights only where a neighbour's class is so low that it may have to be raised.
 */
export class PitFiller {
  private readonly count: number;
  /** Cells before and after the grid count as reached: a step off the grid's side lands on the rim, off its ends in this margin. */
  private readonly margin: number;
  /** Class of each cell that the flood has not reached yet, after the margin. */
  private readonly classes: Uint16Array;
  private readonly first = new Int32Array(BUCKETS);
  private readonly last = new Int32Array(BUCKETS);
  private readonly next: Int32Array;
  private readonly steps: Int32Array;
  /** Heights with every pit filled, once `fill` has been called. */
  readonly filled: Float64Array;
  private low = 0;
  private perBucket = 0;
  private fall = 0;

  constructor(columns: number, rows: number) {
    this.count = columns * rows;
    this.margin = columns + 1;
    this.classes = new Uint16Array(this.count + 2 * this.margin);
    this.next = new Int32Array(this.count);
    this.steps = Int32Array.of(1, -1, columns, -columns, columns + 1, 1 - columns, columns - 1, -columns - 1);
    this.filled = new Float64Array(this.count);
  }

  /**
   * @param isOutlet 1 where water leaves: the whole rim of the grid, and the sea
   * @param fall least fall from cell to cell on filled ground, in the unit of `heights`
   * @returns the filled heights, good until the next call
   */
  fill(heights: Float64Array, isOutlet: Uint8Array, fall = FILL_FALL): Float64Array {
    this.setClasses(heights);
    this.filled.set(heights);
    this.first.fill(-1);
    this.next.fill(-1);
    this.fall = fall;
    for (let cell = 0; cell < this.count; cell++) if (isOutlet[cell] !== 0) this.reachOutlet(cell);
    // A neighbour more classes higher than this cannot lie under a cell's height and the fall.
    const near = 1 + Math.ceil(fall * this.perBucket);
    for (let bucket = 0; bucket < BUCKETS; bucket++) if (this.first[bucket]! >= 0) this.empty(bucket, bucket + near);
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
    const { classes, margin } = this;
    classes.fill(REACHED);
    for (let i = 0; i < heights.length; i++) classes[i + margin] = (heights[i]! - low) * perBucket;
    this.low = low;
    this.perBucket = perBucket;
  }

  private reachOutlet(cell: number): void {
    const bucket = this.classes[cell + this.margin]!;
    this.classes[cell + this.margin] = REACHED;
    this.append(cell, bucket);
  }

  private append(cell: number, bucket: number): void {
    if (this.first[bucket]! < 0) this.first[bucket] = cell;
    else this.next[this.last[bucket]!] = cell;
    this.last[bucket] = cell;
  }

  /** Reaches the neighbours of all cells of a class, those that come into it meanwhile too. @param near classes up to this may need raising */
  private empty(bucket: number, near: number): void {
    const { classes, first, last, next, steps, margin } = this;
    for (let cell = first[bucket]!; cell >= 0; cell = next[cell]!)
      for (let k = 0; k < 8; k++) {
        const other = cell + steps[k]!;
        let its = classes[other + margin]!;
        if (its === REACHED) continue;
        classes[other + margin] = REACHED;
        if (its <= near) its = this.raised(other, cell, its);
        if (first[its]! < 0) first[its] = other;
        else next[last[its]!] = other;
        last[its] = other;
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
