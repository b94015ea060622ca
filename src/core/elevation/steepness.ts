import type { ElevationGrid } from './elevationGrid';

/** Looks at about so many cells: enough for a median. */
const CELLS_LOOKED_AT = 20_000;

/** The slope, degrees from level, that half of the land stays under; 0 where no cell has neighbours with heights. */
export function medianSlopeDeg({ columns, rows, cellEastM, cellNorthM, heightsM }: ElevationGrid): number {
  const step = Math.max(1, Math.floor((columns * rows) / CELLS_LOOKED_AT));
  const slopes: number[] = [];
  for (let i = 0; i < columns * (rows - 1); i += step) {
    if (i % columns === columns - 1) continue;
    const [here, east, north] = [heightsM[i]!, heightsM[i + 1]!, heightsM[i + columns]!];
    const slope = Math.hypot((east - here) / cellEastM, (north - here) / cellNorthM);
    if (!Number.isNaN(slope)) slopes.push(slope);
  }
  slopes.sort((a, b) => a - b);
  return (Math.atan(slopes[slopes.length >> 1] ?? 0) * 180) / Math.PI;
}
