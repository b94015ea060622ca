import { COVER } from './world';

/** Scores are told apart this finely. */
const CLASSES = 8_192;
/** Cells are gone through in stretches of this many: a short loop that is called often is compiled sooner than a long one called once. */
const STRETCH = 1_024;

/** Gives out the free cells of a cover grid, one cover after the other. */
export class CoverClaims {
  /** Indices of the free cells, rising; the first `count` hold. */
  private readonly free: Int32Array;
  private readonly classOf: Uint16Array;
  private readonly counts = new Int32Array(CLASSES);
  private count = 0;
  private low = 0;
  private high = 0;

  constructor(private readonly cover: Uint8Array) {
    this.free = new Int32Array(cover.length);
    this.classOf = new Uint16Array(cover.length);
    for (let at = 0; at < cover.length; at += STRETCH) this.gather(at, Math.min(cover.length, at + STRETCH));
  }

  /** Number of free cells. */
  get left(): number {
    return this.count;
  }

  /** Gives a cover to the free cells with the highest scores until it has its share of the map. */
  claim(scores: Float32Array, kind: number, share: number): void {
    const wished = Math.round(share * this.cover.length);
    if (wished === 0) return;
    const { count, counts } = this;
    this.low = Number.POSITIVE_INFINITY;
    this.high = Number.NEGATIVE_INFINITY;
    for (let k = 0; k < count; k += STRETCH) this.widen(scores, k, Math.min(count, k + STRETCH));
    const perClass = (CLASSES - 1) / (this.high > this.low ? this.high - this.low : 1);
    counts.fill(0);
    for (let k = 0; k < count; k += STRETCH) this.sort(scores, perClass, k, Math.min(count, k + STRETCH));
    let from = CLASSES;
    for (let claimed = 0; from > 0 && claimed < wished; ) claimed += counts[--from]!;
    this.count = 0;
    for (let k = 0; k < count; k += STRETCH) this.take(from, kind, k, Math.min(count, k + STRETCH));
  }

  private gather(at: number, end: number): void {
    const { cover, free } = this;
    let count = this.count;
    for (let i = at; i < end; i++) if (cover[i] === COVER.open) free[count++] = i;
    this.count = count;
  }

  private widen(scores: Float32Array, from: number, end: number): void {
    const { free } = this;
    let { low, high } = this;
    for (let k = from; k < end; k++) {
      const score = scores[free[k]!]!;
      if (score < low) low = score;
      if (score > high) high = score;
    }
    this.low = low;
    this.high = high;
  }

  private sort(scores: Float32Array, perClass: number, from: number, end: number): void {
    const { free, classOf, counts, low } = this;
    for (let k = from; k < end; k++) {
      const its = Math.floor((scores[free[k]!]! - low) * perClass);
      classOf[k] = its;
      counts[its]! += 1;
    }
  }

  private take(least: number, kind: number, from: number, end: number): void {
    const { cover, free, classOf } = this;
    let count = this.count;
    for (let k = from; k < end; k++) {
      const cell = free[k]!;
      if (classOf[k]! >= least) cover[cell] = kind;
      else free[count++] = cell;
    }
    this.count = count;
  }
}
