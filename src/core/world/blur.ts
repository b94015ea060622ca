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
  const nothing = new Float64Array(columns);
  let count = 0;
  for (let row = 0; row < rows; row++) {
    // The first row has all those ahead come at once; from then on one comes, while there are any, and one goes, once there are any.
    for (let coming = row === 0 ? 0 : row + reach; coming <= row + reach && coming < rows; coming++, count++) {
      line.set(values.subarray(coming * columns, (coming + 1) * columns));
      meanAlong(line, ring[coming % held]!, reach);
      if (coming < reach) addTo(sums, ring[coming]!);
    }
    const comes = row + reach < rows ? ring[(row + reach) % held]! : nothing;
    const goes = row > reach ? ring[(row - reach - 1) % held]! : nothing;
    if (row > reach) count--;
    turnOver(sums, comes, goes, count, to, row * columns);
  }
  return to;
}

function addTo(sums: Float64Array, means: Float64Array): void {
  for (let i = 0; i < sums.length; i++) sums[i]! += means[i]!;
}

/** Takes a row into the sums and another out of them, and gives their mean. */
function turnOver(sums: Float64Array, comes: Float64Array, goes: Float64Array, count: number, to: Float32Array, at: number): void {
  for (let i = 0; i < sums.length; i++) {
    const sum = sums[i]! + comes[i]! - goes[i]!;
    sums[i] = sum;
    to[at + i] = sum / count;
  }
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
