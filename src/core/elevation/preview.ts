import type { ElevationGrid } from './elevationGrid';
import { heightBetween } from './heightBetween';
import { heightM, widthM } from './window';

/** The whole of a grid in square cells for a picture of it: row-major from the south-west corner, NaN where the file has no height. */
export type Preview = { readonly columns: number; readonly rows: number; readonly cellM: number; readonly values: Float32Array };

/** @param most cells of the longer side. A file of coarser cells is drawn smooth between them. */
export function previewOf(grid: ElevationGrid, most: number): Preview {
  const [wide, high] = [widthM(grid), heightM(grid)];
  const cellM = Math.max(wide, high) / most;
  const [columns, rows] = [Math.max(2, Math.round(wide / cellM)), Math.max(2, Math.round(high / cellM))];
  const values = new Float32Array(columns * rows);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const [eastM, northM] = [((column + 0.5) / columns) * wide, ((row + 0.5) / rows) * high];
      values[row * columns + column] = heightBetween(grid, eastM, northM);
    }
  return { columns, rows, cellM, values };
}

export type PieceFacts = { readonly lowM: number; readonly highM: number; readonly holesShare: number };

/** About what a square piece holds, from the picture of the whole; low over high where no cell of the picture lies in it. */
export function pieceFacts(
  { columns, rows, cellM, values }: Preview,
  { eastM, northM, sizeM }: { readonly eastM: number; readonly northM: number; readonly sizeM: number },
): PieceFacts {
  let [lowM, highM, holes, count] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0, 0];
  const within = (fromM: number, most: number): readonly [number, number] => [
    Math.max(0, Math.floor(fromM / cellM)),
    Math.min(most, Math.ceil((fromM + sizeM) / cellM)),
  ];
  const [[west, east], [south, north]] = [within(eastM, columns), within(northM, rows)];
  for (let row = south; row < north; row++)
    for (let column = west; column < east; column++) {
      const h = values[row * columns + column]!;
      count++;
      if (Number.isNaN(h)) holes++;
      else {
        lowM = Math.min(lowM, h);
        highM = Math.max(highM, h);
      }
    }
  return { lowM, highM, holesShare: count === 0 ? 0 : holes / count };
}
