import type { Grid } from './grid';

/**
 * Values of a coarse grid at the middles of finer cells, a row of cells at a time from the south: what `valueAt` gives, to the bit.
 * What two rows of the coarse grid are along the fine cells is kept while the fine rows lie between them.
 */
export class AlongRow {
  private readonly from: Int32Array;
  private readonly share: Float64Array;
  private south: Float64Array;
  private north: Float64Array;
  private southRow = -2;
  private readonly values: Float64Array;

  constructor(
    private readonly grid: Grid<Float32Array>,
    cells: number,
    private readonly cellM: number,
  ) {
    this.from = new Int32Array(cells);
    this.share = new Float64Array(cells);
    this.south = new Float64Array(cells);
    this.north = new Float64Array(cells);
    this.values = new Float64Array(cells);
    for (let i = 0; i < cells; i++) {
      const x = Math.min(grid.columns - 1, Math.max(0, ((i + 0.5) * cellM) / grid.cellM - 0.5));
      this.from[i] = Math.min(grid.columns - 2, Math.floor(x));
      this.share[i] = x - this.from[i]!;
    }
  }

  /** The values along one row; good until the next call. */
  at(row: number): Float64Array {
    const { grid, values } = this;
    const y = Math.min(grid.rows - 1, Math.max(0, ((row + 0.5) * this.cellM) / grid.cellM - 0.5));
    const southRow = Math.min(grid.rows - 2, Math.floor(y));
    if (southRow !== this.southRow) {
      [this.south, this.north] = [this.north, this.south];
      if (southRow !== this.southRow + 1) this.spread(southRow, this.south);
      this.spread(southRow + 1, this.north);
      this.southRow = southRow;
    }
    const share = y - southRow;
    const { south, north } = this;
    for (let i = 0; i < values.length; i++) values[i] = south[i]! + (north[i]! - south[i]!) * share;
    return values;
  }

  private spread(gridRow: number, to: Float64Array): void {
    const { values, columns } = this.grid;
    for (let i = 0; i < to.length; i++) {
      const at = gridRow * columns + this.from[i]!;
      to[i] = values[at]! + (values[at + 1]! - values[at]!) * this.share[i]!;
    }
  }
}
