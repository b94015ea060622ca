import { drain, rimOf } from './drainage';
import type { Weathering } from './relief';

/**
 * Lets rivers cut and slopes creep, on heights of about 0..1 in place. Rivers cut by the stream-power law
 * dz/dt = -k sqrt(area) slope, solved from the mouths up without a limit on the time step (Braun and Willett 2013);
 * slopes creep by plain diffusion. The rim and what lies below 0 stay.
 */
export function weather(heights: Float64Array, columns: number, rows: number, how: Weathering): void {
  const count = columns * rows;
  const fixed = rimOf(columns, rows);
  for (let i = 0; i < count; i++) if (heights[i]! <= 0) fixed[i] = 1;
  const first = Float64Array.from(heights);
  for (let round = 0; round < how.rounds; round++) {
    const { filledM, receiver, downstreamFirst, area } = drain(heights, columns, rows, fixed, 1e-5);
    for (let at = 0; at < count; at++) {
      const cell = downstreamFirst[at]!;
      const to = receiver[cell]!;
      if (to === cell) continue;
      const straight = cell - to === 1 || to - cell === 1 || cell - to === columns || to - cell === columns;
      const cut = how.cut * Math.sqrt(area[cell]!) * (straight ? 1 : Math.sqrt(0.5));
      heights[cell] = (filledM[cell]! + how.uplift * first[cell]! + cut * heights[to]!) / (1 + cut);
    }
    creep(heights, columns, rows, fixed, how.creep);
  }
}

function creep(heights: Float64Array, columns: number, rows: number, fixed: Uint8Array, rate: number): void {
  const before = Float64Array.from(heights);
  for (let row = 1; row < rows - 1; row++) {
    for (let cell = row * columns + 1, end = cell + columns - 2; cell < end; cell++) {
      if (fixed[cell]) continue;
      const around = before[cell - 1]! + before[cell + 1]! + before[cell - columns]! + before[cell + columns]!;
      heights[cell] = before[cell]! + rate * (around - 4 * before[cell]!);
    }
  }
}
