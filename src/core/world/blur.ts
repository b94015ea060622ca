/** Mean over a square of (2 reach + 1) cells, running sums along rows and then columns; at the rim over the cells there are. */
export function blurred(values: Float64Array | Float32Array, columns: number, rows: number, reach: number): Float32Array {
  const wide = new Float64Array(values.length);
  const out = new Float32Array(values.length);
  runAlong(values, wide, rows, columns, columns, 1, reach);
  runAlong(wide, out, columns, rows, 1, columns, reach);
  return out;
}

function runAlong(
  from: Float64Array | Float32Array,
  to: Float64Array | Float32Array,
  lines: number,
  length: number,
  lineStep: number,
  step: number,
  reach: number,
): void {
  for (let line = 0; line < lines; line++) {
    const base = line * lineStep;
    let sum = 0;
    let count = 0;
    for (let i = 0; i < Math.min(reach, length); i++) {
      sum += from[base + i * step]!;
      count++;
    }
    for (let i = 0; i < length; i++) {
      if (i + reach < length) {
        sum += from[base + (i + reach) * step]!;
        count++;
      }
      if (i - reach - 1 >= 0) {
        sum -= from[base + (i - reach - 1) * step]!;
        count--;
      }
      to[base + i * step] = sum / count;
    }
  }
}
