const BUCKETS = 16_384;
/** Fall kept across filled ground, metres a cell. */
export const FILL_FALL = 0.004;

/**
 * Heights with every pit filled, so that each cell but the outlets has a lower neighbour: from the outlets inward, lowest first
 * (priority flood with a falling fill: Barnes, Lehman and Mulla 2014). Heights are taken in `BUCKETS` classes, each a
 * first-in-first-out list threaded through `next`, so the fill may stand one class too high, never too low.
 * Hot, hence long: every height in the map goes through it once per round of weathering; `tests/bench/worlds.ts` holds it.
 * @param isOutlet 1 where water leaves: the whole rim of the grid, and the sea
 * @param fall least fall from cell to cell on filled ground, in the unit of `heights`
 */
export function fillPits(heights: Float64Array, columns: number, isOutlet: Uint8Array, fall = FILL_FALL): Float64Array {
  const count = heights.length;
  let low = heights[0]!;
  let high = low;
  for (let i = 1; i < count; i++) {
    const h = heights[i]!;
    if (h < low) low = h;
    if (h > high) high = h;
  }
  const perBucket = (BUCKETS - 1) / (high - low > 0 ? high - low : 1);
  const first = new Int32Array(BUCKETS).fill(-1);
  const last = new Int32Array(BUCKETS);
  const next = new Int32Array(count).fill(-1);
  const filled = heights.slice();
  const steps = Int32Array.of(1, -1, columns, -columns, columns + 1, 1 - columns, columns - 1, -columns - 1);
  // Cells before and after the grid count as seen: a step off the grid's side lands on the rim, off its ends in this margin.
  const margin = columns + 1;
  const seen = new Uint8Array(count + 2 * margin).fill(1);
  seen.set(isOutlet, margin);
  const append = (cell: number, h: number): void => {
    const bucket = Math.min(BUCKETS - 1, Math.floor((h - low) * perBucket));
    if (first[bucket]! < 0) first[bucket] = cell;
    else next[last[bucket]!] = cell;
    last[bucket] = cell;
  };
  for (let i = 0; i < count; i++) if (isOutlet[i] !== 0) append(i, heights[i]!);
  for (let bucket = 0; bucket < BUCKETS; bucket++)
    for (let cell = first[bucket]!; cell >= 0; cell = next[cell]!) {
      const least = filled[cell]! + fall;
      for (let k = 0; k < 8; k++) {
        const other = cell + steps[k]!;
        if (seen[other + margin] !== 0) continue;
        seen[other + margin] = 1;
        let h = filled[other]!;
        if (h < least) {
          h = least;
          filled[other] = h;
        }
        append(other, h);
      }
    }
  return filled;
}
