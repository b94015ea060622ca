/**
 * Mean over a square of (2 reach + 1) cells, running sums along rows and then columns; at the rim over the cells there are.
 * Sums run in double precision. The means along rows live only as long as a column's sum needs them, in a ring of rows
 * small enough to stay in the cache.
 */
export function blurred(values: Float64Array | Float32Array, columns: number, rows: number, reach: number): Float32Array {
  const to = new Float32Array(values.length);
  const held = Math.min(rows, 2 * reach + 2);
  const ring = new Float64Array(held * columns);
  const sums = new Float64Array(columns);
  let count = 0;
  let coming = 0;
  for (let row = 0; row < rows; row++) {
    for (; coming < rows && coming <= row + reach; coming++, count++) {
      const at = (coming % held) * columns;
      meanAlongRow(values, coming * columns, ring, at, columns, reach);
      for (let column = 0; column < columns; column++) sums[column]! += ring[at + column]!;
    }
    if (row - reach - 1 >= 0) {
      const at = ((row - reach - 1) % held) * columns;
      for (let column = 0; column < columns; column++) sums[column]! -= ring[at + column]!;
      count--;
    }
    const base = row * columns;
    for (let column = 0; column < columns; column++) to[base + column] = sums[column]! / count;
  }
  return to;
}

function meanAlongRow(
  from: Float64Array | Float32Array,
  fromAt: number,
  to: Float64Array,
  toAt: number,
  length: number,
  reach: number,
): void {
  let sum = 0;
  let count = Math.min(reach, length);
  for (let i = 0; i < count; i++) sum += from[fromAt + i]!;
  const comeEnd = length - reach;
  let i = 0;
  for (const end = Math.min(reach + 1, comeEnd); i < end; i++) {
    sum += from[fromAt + i + reach]!;
    count++;
    to[toAt + i] = sum / count;
  }
  // Away from the ends one value comes and one goes.
  for (; i < comeEnd; i++) {
    sum = sum + from[fromAt + i + reach]! - from[fromAt + i - reach - 1]!;
    to[toAt + i] = sum / count;
  }
  for (; i < length; i++) {
    if (i > reach) {
      sum -= from[fromAt + i - reach - 1]!;
      count--;
    }
    to[toAt + i] = sum / count;
  }
}
