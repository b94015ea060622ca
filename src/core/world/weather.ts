import { breachDams } from './breach';
import { type Drainage, Drainer, rimOf } from './drainage';
import type { Weathering } from './relief';

/** Cuts made for one finding of the water's ways: the ways move slowly, finding them is the dear part. */
const CUTS_PER_DRAINAGE = 2;

/**
 * Lets rivers cut and slopes creep, on heights of about 0..1 in place. Rivers cut by the stream-power law
 * dz/dt = -k sqrt(area) slope, solved from the mouths up without a limit on the time step (Braun and Willett 2013);
 * slopes creep by plain diffusion. The rim and what lies below 0 stay.
 */
export function weather(heights: Float64Array, columns: number, rows: number, how: Weathering): void {
  const fixed = rimOf(columns, rows);
  for (let i = 0; i < heights.length; i++) if (heights[i]! <= 0) fixed[i] = 1;
  const first = heights.slice();
  const before = new Float64Array(heights.length);
  const drainer = new Drainer(columns, rows);
  const cuts = new Float64Array(heights.length);
  for (let round = 0; round < how.rounds; round += CUTS_PER_DRAINAGE) {
    const drainage = drainer.drain(heights, fixed, 1e-5);
    breachDams(heights, drainage, fixed, columns, Number.POSITIVE_INFINITY);
    for (let at = 0; at < cuts.length; at += columns) measureCuts(cuts, at, columns, drainage, how.cut);
    for (let k = 0; k < CUTS_PER_DRAINAGE; k++) {
      for (let at = 0; at < cuts.length; at += columns) cutDown(heights, first, at, columns, drainage, cuts, how.uplift);
      before.set(heights);
      for (let rowAt = 0; rowAt < cuts.length; rowAt += columns) creep(before, heights, rowAt, columns, fixed, how.creep);
    }
  }
}

/** How strongly the river cuts at each cell, in the order downstream first; as many cells as a row has, from `from` on. */
function measureCuts(cuts: Float64Array, from: number, columns: number, { receiver, downstreamFirst, area }: Drainage, cut: number): void {
  const slant = Math.sqrt(0.5);
  for (let at = from; at < from + columns; at++) {
    const cell = downstreamFirst[at]!;
    const to = receiver[cell]!;
    const step = cell > to ? cell - to : to - cell;
    cuts[at] = cut * Math.sqrt(area[cell]!) * (step === 1 || step === columns ? 1 : slant);
  }
}

function cutDown(
  heights: Float64Array,
  first: Float64Array,
  from: number,
  columns: number,
  { receiver, downstreamFirst }: Drainage,
  cuts: Float64Array,
  uplift: number,
): void {
  for (let at = from; at < from + columns; at++) {
    const cell = downstreamFirst[at]!;
    const to = receiver[cell]!;
    if (to === cell) continue;
    const cut = cuts[at]!;
    const raised = heights[cell]! + uplift * first[cell]!;
    heights[cell] = raised > heights[to]! ? (raised + cut * heights[to]!) / (1 + cut) : raised;
  }
}

function creep(before: Float64Array, heights: Float64Array, rowAt: number, columns: number, fixed: Uint8Array, rate: number): void {
  for (let cell = rowAt; cell < rowAt + columns; cell++) {
    if (fixed[cell] !== 0) continue;
    const around = before[cell - 1]! + before[cell + 1]! + before[cell - columns]! + before[cell + columns]!;
    heights[cell] = before[cell]! + rate * (around - 4 * before[cell]!);
  }
}
