import type { Drainage } from './drainage';

/**
 * Lets water out of closed hollows: from each hollow's lowest cell a channel is cut along the way the filled land drains,
 * until it meets lower ground. Valleys stay valleys; filling alone would turn each dammed one into a flat.
 * Changes `heights`, never upward. @param deepest a dam is cut no deeper than this; deeper hollows are left for filling
 */
export function breachDams(heights: Float64Array, { filledM, receiver }: Drainage, columns: number, rows: number, deepest: number): void {
  for (let row = 1; row < rows - 1; row++)
    for (let cell = row * columns + 1, end = cell + columns - 2; cell < end; cell++)
      if (filledM[cell]! > heights[cell]! && filledM[cell]! - heights[cell]! <= deepest && isLowest(heights, cell, columns))
        cutOut(heights, cell, filledM, receiver);
}

function isLowest(heights: Float64Array, cell: number, columns: number): boolean {
  const h = heights[cell]!;
  return (
    heights[cell - 1]! >= h &&
    heights[cell + 1]! >= h &&
    heights[cell - columns]! >= h &&
    heights[cell + columns]! >= h &&
    heights[cell - columns - 1]! >= h &&
    heights[cell - columns + 1]! >= h &&
    heights[cell + columns - 1]! >= h &&
    heights[cell + columns + 1]! >= h
  );
}

function cutOut(heights: Float64Array, from: number, filledM: Float64Array, receiver: Int32Array): void {
  let level = heights[from]!;
  for (let cell = receiver[from]!; ; cell = receiver[cell]!) {
    if (heights[cell]! < level) {
      // Lower ground outside any hollow: the water is out.
      if (filledM[cell]! <= heights[cell]!) return;
      level = heights[cell]!;
    } else heights[cell] = level;
    if (receiver[cell] === cell) return;
  }
}
