/**
 * A square grid of numbers over the map: row-major from the south-west corner, a value at each cell's centre.
 * Cell (column, row) has its centre at ((column + 0.5) cellM, (row + 0.5) cellM).
 */
export type Grid<A extends Float64Array | Float32Array | Uint8Array = Float32Array> = {
  readonly columns: number;
  readonly rows: number;
  readonly cellM: number;
  readonly values: A;
};

/** Index of the cell that holds a point; points outside are moved to the nearest edge cell. */
export function cellIndex(grid: Grid<Float64Array | Float32Array | Uint8Array>, eM: number, nM: number): number {
  const column = Math.min(grid.columns - 1, Math.max(0, Math.floor(eM / grid.cellM)));
  const row = Math.min(grid.rows - 1, Math.max(0, Math.floor(nM / grid.cellM)));
  return row * grid.columns + column;
}

/** Bilinear value between the four nearest centres; beyond the outer centres the edge value goes on. */
export function valueAt(grid: Grid<Float32Array | Float64Array>, eM: number, nM: number): number {
  const x = Math.min(grid.columns - 1, Math.max(0, eM / grid.cellM - 0.5));
  const y = Math.min(grid.rows - 1, Math.max(0, nM / grid.cellM - 0.5));
  const x0 = Math.min(grid.columns - 2, Math.floor(x));
  const y0 = Math.min(grid.rows - 2, Math.floor(y));
  const fx = x - x0;
  const fy = y - y0;
  const at = y0 * grid.columns + x0;
  const { values, columns } = grid;
  const south = values[at]! + (values[at + 1]! - values[at]!) * fx;
  const north = values[at + columns]! + (values[at + columns + 1]! - values[at + columns]!) * fx;
  return south + (north - south) * fy;
}
