import type { ElevationGrid } from './elevationGrid';

/**
 * Height between the cells of a grid: smooth (through every cell's height, no crease at it) where all sixteen cells around have one, else
 * straight between those of the four nearest that have; NaN where none has. Beyond the outer centres the edge goes on.
 * @source Catmull-Rom spline, tension one half
 */
export function heightBetween(grid: ElevationGrid, eastM: number, northM: number): number {
  const { columns, rows, cellEastM, cellNorthM } = grid;
  const x = Math.min(columns - 1, Math.max(0, eastM / cellEastM - 0.5));
  const y = Math.min(rows - 1, Math.max(0, northM / cellNorthM - 0.5));
  const [column, row] = [Math.min(columns - 2, Math.floor(x)), Math.min(rows - 2, Math.floor(y))];
  const smooth = smoothHeight(grid, column, row, x - column, y - row);
  return Number.isNaN(smooth) ? straightHeight(grid, column, row, x - column, y - row) : smooth;
}

/** NaN at the rim and wherever one of the sixteen cells has no height. */
function smoothHeight({ columns, rows, heightsM }: ElevationGrid, column: number, row: number, fx: number, fy: number): number {
  if (column < 1 || row < 1 || column > columns - 3 || row > rows - 3) return Number.NaN;
  const along = (at: number) => between(heightsM[at - 1]!, heightsM[at]!, heightsM[at + 1]!, heightsM[at + 2]!, fx);
  const at = row * columns + column;
  return between(along(at - columns), along(at), along(at + columns), along(at + 2 * columns), fy);
}

const between = (a: number, b: number, c: number, d: number, t: number): number =>
  b + 0.5 * t * (c - a + t * (2 * a - 5 * b + 4 * c - d + t * (3 * (b - c) + d - a)));

function straightHeight({ columns, heightsM }: ElevationGrid, column: number, row: number, fx: number, fy: number): number {
  let [sum, weight] = [0, 0];
  for (let j = 0; j < 2; j++)
    for (let i = 0; i < 2; i++) {
      const h = heightsM[(row + j) * columns + column + i]!;
      if (Number.isNaN(h)) continue;
      const w = (i ? fx : 1 - fx) * (j ? fy : 1 - fy);
      sum += w * h;
      weight += w;
    }
  return weight > 1e-9 ? sum / weight : Number.NaN;
}
