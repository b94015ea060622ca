/**
 * Solves A x = b in place for a complex square matrix, Gaussian elimination with row pivots. `a` holds re, im pairs row by row
 * (length 2 n²), `b` re, im pairs (length 2 n); both are overwritten and `b` becomes x.
 * @throws RangeError where the matrix is singular. Hot loop: plain indices on purpose.
 */
export function solveInPlace(a: Float64Array, b: Float64Array, n: number): void {
  for (let col = 0; col < n; col++) {
    swapRows(a, b, n, col, pivotRow(a, n, col));
    const at = 2 * (col * n + col);
    const size2 = a[at]! * a[at]! + a[at + 1]! * a[at + 1]!;
    if (!(size2 > 0)) throw new RangeError('the wires give a singular system: do two of them coincide?');
    const invRe = a[at]! / size2;
    const invIm = -a[at + 1]! / size2;
    for (let row = col + 1; row < n; row++) {
      const head = 2 * (row * n + col);
      const fRe = a[head]! * invRe - a[head + 1]! * invIm;
      const fIm = a[head]! * invIm + a[head + 1]! * invRe;
      for (let j = col + 1; j < n; j++) subtractTimes(a, 2 * (row * n + j), fRe, fIm, a, 2 * (col * n + j));
      subtractTimes(b, 2 * row, fRe, fIm, b, 2 * col);
    }
  }
  for (let row = n - 1; row >= 0; row--) {
    for (let j = row + 1; j < n; j++) subtractTimes(b, 2 * row, a[2 * (row * n + j)]!, a[2 * (row * n + j) + 1]!, b, 2 * j);
    const at = 2 * (row * n + row);
    const size2 = a[at]! * a[at]! + a[at + 1]! * a[at + 1]!;
    const re = (b[2 * row]! * a[at]! + b[2 * row + 1]! * a[at + 1]!) / size2;
    b[2 * row + 1] = (b[2 * row + 1]! * a[at]! - b[2 * row]! * a[at + 1]!) / size2;
    b[2 * row] = re;
  }
}

function subtractTimes(into: Float64Array, at: number, re: number, im: number, from: Float64Array, there: number): void {
  const x = from[there]!;
  const y = from[there + 1]!;
  into[at] = into[at]! - re * x + im * y;
  into[at + 1] = into[at + 1]! - re * y - im * x;
}

function pivotRow(a: Float64Array, n: number, col: number): number {
  let best = col;
  let most = -1;
  for (let row = col; row < n; row++) {
    const at = 2 * (row * n + col);
    const size = Math.abs(a[at]!) + Math.abs(a[at + 1]!);
    if (size > most) [best, most] = [row, size];
  }
  return best;
}

function swapRows(a: Float64Array, b: Float64Array, n: number, one: number, other: number): void {
  if (one === other) return;
  for (let j = 0; j < 2 * n; j++) {
    const held = a[2 * one * n + j]!;
    a[2 * one * n + j] = a[2 * other * n + j]!;
    a[2 * other * n + j] = held;
  }
  for (let part = 0; part < 2; part++) {
    const held = b[2 * one + part]!;
    b[2 * one + part] = b[2 * other + part]!;
    b[2 * other + part] = held;
  }
}
