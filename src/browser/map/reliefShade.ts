import type { Grid } from '../../core/world/grid';

/** Shade as one signed byte per fine cell, row 0 in the north: below 128 in shadow, above it in the light. */
export type Shade = { readonly columns: number; readonly rows: number; readonly values: Uint8Array };

/** Unit vectors toward the lights: the main one in the north-west, a weak one in the west that keeps north-east slopes apart. */
const MAIN = { x: -0.5, y: 0.5, z: 0.71 };
const SIDE = { x: -0.83, y: -0.2, z: 0.52 };

/** Soft hillshade: what is level is neutral; slopes are exaggerated so that low relief still reads. */
export function reliefShade(heights: Grid<Float32Array>, exaggeration: number): Shade {
  const { columns, rows, cellM, values } = heights;
  const out = new Uint8Array(columns * rows);
  const level = 0.8 * MAIN.z + 0.2 * SIDE.z;
  for (let row = 0; row < rows; row++) {
    const south = Math.max(0, row - 1);
    const north = Math.min(rows - 1, row + 1);
    for (let column = 0; column < columns; column++) {
      const west = Math.max(0, column - 1);
      const east = Math.min(columns - 1, column + 1);
      const rise = exaggeration / cellM;
      const gx = ((values[row * columns + east]! - values[row * columns + west]!) * rise) / Math.max(1, east - west);
      const gy = ((values[north * columns + column]! - values[south * columns + column]!) * rise) / Math.max(1, north - south);
      const length = Math.sqrt(1 + gx * gx + gy * gy);
      const main = (-gx * MAIN.x - gy * MAIN.y + MAIN.z) / length;
      const side = (-gx * SIDE.x - gy * SIDE.y + SIDE.z) / length;
      const light = 0.8 * Math.max(0, main) + 0.2 * Math.max(0, side) - level;
      out[(rows - 1 - row) * columns + column] = Math.min(255, Math.max(0, Math.round(128 + 180 * light)));
    }
  }
  return { columns, rows, values: out };
}
