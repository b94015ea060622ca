import { COVER, type World } from '../../../src/core/world/world';

/** Bare ground of a given shape: open cover, nothing on it. For tests that need to know every height. */
export function shapedWorld(
  heightM: (eM: number, nM: number) => number,
  sizeM = 2_000,
  cellM = 10,
  coverAt: (eM: number, nM: number) => number = () => COVER.open,
): World {
  const columns = Math.round(sizeM / cellM);
  const grid = { columns, rows: columns, cellM };
  const values = new Float32Array(columns * columns);
  const cover = new Uint8Array(columns * columns);
  for (let i = 0; i < values.length; i++) {
    const eM = ((i % columns) + 0.5) * cellM;
    const nM = (Math.floor(i / columns) + 0.5) * cellM;
    values[i] = heightM(eM, nM);
    cover[i] = coverAt(eM, nM);
  }
  return {
    sizeM,
    cellM,
    groundM: { ...grid, values },
    cover: { ...grid, values: cover },
    trackMask: { ...grid, values: new Uint8Array(columns * columns) },
    tracks: [],
    streams: [],
    fieldWalls: [],
    buildings: [],
    powerLines: [],
  };
}
