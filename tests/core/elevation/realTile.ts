import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const SIDE = 1_201;
const VOID = -32_768;

/**
 * A piece of a real elevation model as an ESRI ASCII grid: the three-second tile of 57 to 58 degrees north, 11 to 12 east, from the Shuttle
 * Radar Topography Mission (public domain), that the npm package srtm-elevation carries for its own tests. Rows and columns from the north-west.
 */
export function realTileText(row: number, column: number, rows: number, columns: number): string {
  const tile = readFileSync(createRequire(import.meta.url).resolve('srtm-elevation/test/data/N57E011.hgt'));
  const heightAt = (r: number, c: number) => tile.readInt16BE(2 * (r * SIDE + c));
  const cell = 1 / (SIDE - 1);
  const lines = Array.from({ length: rows }, (_, r) => Array.from({ length: columns }, (_, c) => heightAt(row + r, column + c)).join(' '));
  const [west, south] = [11 + (column - 0.5) * cell, 58 - (row + rows - 0.5) * cell];
  return [
    `ncols ${columns}`,
    `nrows ${rows}`,
    `xllcorner ${west}`,
    `yllcorner ${south}`,
    `cellsize ${cell}`,
    `NODATA_value ${VOID}`,
    ...lines,
  ].join('\n');
}
