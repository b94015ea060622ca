import { type FilledLand, steepestBelow } from './drainage';

/**
 * Lets water out of closed hollows: from each hollow's lowest cell a channel is cut along the way the filled land drains,
 * until it meets lower ground. Valleys stay valleys; filling alone would turn each dammed one into a flat.
 * Changes `heights`, never upward, and learns receivers.
 * @param filled `heights` with pits filled @param isOutlet as it was when they were filled
 * @param deepest a dam is cut no deeper than this; deeper hollows are left for filling
 */
export function breachDams(heights: Float64Array, filled: FilledLand, isOutlet: Uint8Array, columns: number, deepest: number): void {
  for (let rowAt = 0; rowAt < heights.length; rowAt += columns) breachRow(heights, rowAt, filled, isOutlet, columns, deepest);
}

function breachRow(heights: Float64Array, rowAt: number, filled: FilledLand, isOutlet: Uint8Array, columns: number, deepest: number): void {
  const { filledM } = filled;
  for (let cell = rowAt; cell < rowAt + columns; cell++) {
    const depth = filledM[cell]! - heights[cell]!;
    if (depth > 0 && depth <= deepest && isLowest(heights, cell, columns)) cutOut(heights, cell, filled, isOutlet, columns);
  }
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

function cutOut(heights: Float64Array, from: number, { filledM, receiver }: FilledLand, isOutlet: Uint8Array, columns: number): void {
  let level = heights[from]!;
  for (let cell = from; isOutlet[cell] === 0; ) {
    // Only the few ways out of hollows are asked for, so the receivers of all cells need not be known.
    let below = receiver[cell]!;
    if (below < 0) {
      below = steepestBelow(filledM, cell, columns);
      receiver[cell] = below;
    }
    if (below === cell) return;
    cell = below;
    if (heights[cell]! < level) {
      // Lower ground outside any hollow: the water is out.
      if (filledM[cell]! <= heights[cell]!) return;
      level = heights[cell]!;
    } else heights[cell] = level;
  }
}
