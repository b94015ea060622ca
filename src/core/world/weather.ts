import { breachDams } from './breach';
import { type Drainage, drain, rimOf } from './drainage';
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
  for (let round = 0; round < how.rounds; round += CUTS_PER_DRAINAGE) {
    const drainage = drain(heights, columns, fixed, 1e-5);
    breachDams(heights, drainage.filledM, fixed, columns, Number.POSITIVE_INFINITY);
    for (let k = 0; k < CUTS_PER_DRAINAGE; k++) {
      cutDown(heights, first, columns, drainage, how);
      before.set(heights);
      creep(before, heights, columns, fixed, how.creep);
    }
  }
}

function cutDown(
  heights: Float64Array,
  first: Float64Array,
  columns: number,
  { receiver, downstreamFirst, area }: Drainage,
  how: Weathering,
): void {
  const slant = Math.sqrt(0.5);
  for (let at = 0; at < downstreamFirst.length; at++) {
    const cell = downstreamFirst[at]!;
    const to = receiver[cell]!;
    if (to === cell) continue;
    const step = cell > to ? cell - to : to - cell;
    const cut = how.cut * Math.sqrt(area[cell]!) * (step === 1 || step === columns ? 1 : slant);
    const raised = heights[cell]! + how.uplift * first[cell]!;
    heights[cell] = raised > heights[to]! ? (raised + cut * heights[to]!) / (1 + cut) : raised;
  }
}

function creep(before: Float64Array, heights: Float64Array, columns: number, fixed: Uint8Array, rate: number): void {
  for (let cell = 0; cell < heights.length; cell++) {
    if (fixed[cell] !== 0) continue;
    const around = before[cell - 1]! + before[cell + 1]! + before[cell - columns]! + before[cell + columns]!;
    heights[cell] = before[cell]! + rate * (around - 4 * before[cell]!);
  }
}
