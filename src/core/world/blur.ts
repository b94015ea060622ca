/**
 * Mean over a square of (2 reach + 1) cells, running sums along rows and then columns; at the rim over the cells there are.
 * Sums run in double precision. The means along rows live only as long as a column's sum needs them, in a ring of rows
 * small enough to stay in the cache.
 */
export function blurred(values: Float64Array | Float32Array, columns: number, rows: number, reach: number): Float32Array {
  const to = new Float32Array(values.length);
  const held = Math.min(rows, 2 * reach + 2);
  const ring = Array.from({ length: held }, () => new Float64Array(columns));
  const sums = new Float64Array(columns);
  // Every row is copied to doubles first, so that the loops below are compiled for one kind of array.
  const line = new Float64Array(columns);
  let count = 0;
  let coming = 0;
  for (let row = 0; row < rows; row++) {
    for (; coming < rows && coming <= row + reach; coming++, count++) {
      line.set(values.subarray(coming * columns, (coming + 1) * columns));
      const means = ring[coming % held]!;
      meanAlong(line, means, reach);
      addTo(sums, means);
    }
    if (row - reach - 1 >= 0) {
      takeFrom(sums, ring[(row - reach - 1) % held]!);
      count--;
    }
    shareOut(sums, count, to, row * columns);
  }
  return to;
}

function addTo(sums: Float64Array, means: Float64Array): void {
  for (let i = 0; i < sums.length; i++) sums[i]! += means[i]!;
}

function takeFrom(sums: Float64Array, means: Float64Array): void {
  for (let i = 0; i < sums.length; i++) sums[i]! -= means[i]!;
}

function shareOut(sums: Float64Array, count: number, to: Float32Array, at: number): void {
  for (let i = 0; i < sums.length; i++) to[at + i] = sums[i]! / count;
}

function meanAlong(from: Float64Array, to: Float64Array, reach: number): void {
  const length = from.length;
  let sum = 0;
  let count = Math.min(reach, length);
  for (let i = 0; i < count; i++) sum += from[i]!;
  const comeEnd = length - reach;
  let i = 0;
  for (const end = Math.min(reach + 1, comeEnd); i < end; i++) {
    sum += from[i + reach]!;
    count++;
    to[i] = sum / count;
  }
  // Away from the ends one value comes and one goes.
  for (; i < comeEnd; i++) {
    sum = sum + from[i + reach]! - from[i - reach - 1]!;
    to[i] = sum / count;
  }
  for (; i < length; i++) {
    if (i > reach) {
      sum -= from[i - reach - 1]!;
      count--;
    }
    to[i] = sum / count;
  }
}
