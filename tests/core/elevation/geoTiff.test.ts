import { readFileSync } from 'node:fs';
import { zlibSync } from 'fflate';
import { expect, test } from 'vitest';
import { isTiff } from '../../../src/browser/geoTiff/isTiff';
import { readGeoTiff } from '../../../src/browser/geoTiff/readGeoTiff';
import type { ElevationGrid } from '../../../src/core/elevation/elevationGrid';
import { type HeightUnit, readEsriGrid } from '../../../src/core/elevation/esriGrid';
import { InputFaults } from '../../../src/core/scenario/faults';
import { type MadeTiff, madeTiff, rawStrip } from './madeTiff';
import { realTileText } from './realTile';

/**
 * Files that GDAL 3.8 wrote of the real tile's piece of 100 by 60 cells (its build for browsers, npm gdal3.js 2.8.1): gdal_translate, and
 * gdalwarp to UTM and to the grid of web maps. The same heights stand in the text that `realTileText` gives.
 */
const byGdal = (name: string): ArrayBuffer => {
  const { buffer, byteOffset, byteLength } = readFileSync(`tests/core/elevation/tiffs/${name}.tif`);
  return buffer.slice(byteOffset, byteOffset + byteLength) as ArrayBuffer;
};
const truth = readEsriGrid('tile.asc', realTileText(0, 1_040, 60, 100));
const read = (bytes: ArrayBuffer, unit: HeightUnit = 'metres', told: (share: number) => void = () => {}) =>
  readGeoTiff('land.tif', bytes, unit, told);

test.each([
  ['deflate-tiles', 'whole numbers in tiles of 32, Deflate, horizontal differences'],
  ['lzw-floats', 'floats in strips of 16 rows, LZW, differences of floats'],
  ['lzw-big-endian', 'whole numbers, LZW, highest byte first'],
  ['packbits', 'whole numbers, PackBits'],
])('%s as GDAL wrote it (%s) has the heights of the tile, cell by cell', async (name) => {
  const shares: number[] = [];
  const grid = await read(byGdal(name), 'metres', (share) => shares.push(share));
  expect(grid.heightsM).toEqual(truth.heightsM);
  expect([grid.columns, grid.rows]).toEqual([100, 60]);
  expect(grid.cellEastM).toBeCloseTo(truth.cellEastM, 6);
  expect(grid.cellNorthM).toBeCloseTo(truth.cellNorthM, 6);
  expect(grid.latitudeDeg).toBeCloseTo(truth.latitudeDeg!, 6);
  expect(shares.at(-1)).toBe(1);
});

const meanM = ({ heightsM }: ElevationGrid): number => {
  const known = heightsM.filter((h) => !Number.isNaN(h));
  return known.reduce((sum, h) => sum + h, 0) / known.length;
};

test('warped to UTM the cells are the metres that were asked for, the corners outside are holes, the land is as high', async () => {
  const grid = await read(byGdal('utm'));
  expect([grid.cellEastM, grid.cellNorthM, grid.latitudeDeg]).toEqual([90, 90, null]);
  const holes = grid.heightsM.filter(Number.isNaN).length;
  expect(holes).toBeGreaterThan(10);
  expect(holes).toBeLessThan(0.2 * grid.heightsM.length);
  expect(Math.abs(meanM(grid) - meanM(truth))).toBeLessThan(1);
});

test('on the grid of web maps, stretched by 1.89 at 58° north, cells of 150 are told as 79.5 m', async () => {
  const grid = await read(byGdal('web'));
  expect(grid.cellEastM).toBeCloseTo(150 * Math.cos((57.975 * Math.PI) / 180), 1);
  expect(grid.latitudeDeg).toBeCloseTo(57.975, 1);
  expect(Math.abs(grid.columns * grid.cellEastM - truth.columns * truth.cellEastM)).toBeLessThan(160);
  expect(Math.abs(meanM(grid) - meanM(truth))).toBeLessThan(1);
});

const heights = Array.from({ length: 40 * 50 }, (_, i) => 100 + (i % 40) + 2 * Math.floor(i / 40));
const made = (change: Partial<MadeTiff> = {}) => madeTiff({ columns: 40, rows: 50, heights, ...change });

test.each([16, 32, 64] as const)('numbers of %i bits, the first row being the northernmost', async (bits) => {
  const grid = await read(made({ bits }));
  expect(grid.heightsM[0]).toBe(100 + 2 * 49);
  expect(grid.heightsM.at(-1)).toBe(139);
  expect([grid.cellEastM, grid.cellNorthM]).toEqual([30, 30]);
});

test('marks of "no height" are holes: the one that the file names, and those that programs write without a word', async () => {
  const some = heights.map((h, i) => (i < 3 ? [-500, -9_999, -3.4e38][i]! : h));
  const { heightsM } = await read(made({ heights: some, noData: '-500' }));
  expect([...heightsM.slice(40 * 49, 40 * 49 + 4)]).toEqual([Number.NaN, Number.NaN, Number.NaN, 103]);
});

test('units: feet that the file names win, else what was chosen counts; a grid in US feet is told in metres', async () => {
  const first = async (change: Partial<MadeTiff>, unit: HeightUnit) => (await read(made(change), unit)).heightsM.at(-1)!;
  expect(await first({ keys: { 1024: 1, 3076: 9001, 4099: 9002 } }, 'metres')).toBeCloseTo(139 * 0.3048, 4);
  expect(await first({}, 'feet')).toBeCloseTo(139 * 0.3048, 4);
  expect(await first({ keys: { 1024: 1, 4099: 9001 } }, 'feet')).toBe(139);
  expect((await read(made({ keys: { 1024: 1, 3076: 9003 } }))).cellEastM).toBeCloseTo((30 * 1_200) / 3_937, 9);
});

test('a file that names no grid is in degrees where its cells and place can be nothing else', async () => {
  const grid = await read(made({ keys: {}, scale: [1 / 3_600, 1 / 3_600, 0], tiePoint: [0, 0, 0, 7, 60, 0] }));
  expect(grid.cellEastM).toBeCloseTo(111_195 / 3_600 / 2, 0);
  expect((await read(made({ keys: {} }))).latitudeDeg).toBe(null);
});

async function refusal(bytes: ArrayBuffer): Promise<string> {
  try {
    await read(bytes);
    return 'none';
  } catch (error) {
    if (!(error instanceof InputFaults)) throw error;
    return error.faults.map(({ path, found, mend }) => `${path === '' ? '' : `${path}: `}${found}: ${mend}`).join('; ');
  }
}

test.each<[string, Partial<MadeTiff>, RegExp]>([
  ['no place', { scale: null }, /no size or place of its cells: a picture, no GeoTIFF: save it as GeoTIFF, or give an ESRI ASCII grid/],
  [
    'turned',
    { scale: null, transformation: [30, 5, 0, 0, 5, -30, 0, 9e6, 0, 0, 0, 0, 0, 0, 0, 1] },
    /turned or mirrored: save it with north up/,
  ],
  ['an odd unit', { keys: { 1024: 1, 3076: 9036 } }, /cells in the unit 9036: save it on a grid in metres or feet/],
  ['grads', { keys: { 1024: 2, 2054: 9105 } }, /an angle that is not degrees: save it in degrees/],
  ['three bands', { bands: 3, bits: 16 }, /3 bands: a picture or several grids in one: save the band of the heights by itself/],
  ['too many cells', { columns: 40_000, rows: 40_000 }, /40000 by 40000 cells, more than the 4000000 that are read: cut a piece/],
  ['a strip that ends early', { strip: rawStrip(heights.slice(0, 900), 32) }, /can’t be read: .*: get the file again/],
  [
    'a mountain on the moon',
    { heights: heights.map((h, i) => (i === 81 ? 29_029 : h)) },
    /row 3, column 2: a height of 29029: .* take the heights as feet/,
  ],
  [
    'Deflate that is none',
    { packing: 8, strip: new Uint8Array(500).fill(7) },
    /a packed part that is cut off or changed: get the file again/,
  ],
  [
    'LZW that is none',
    { packing: 5, strip: new Uint8Array(500).fill(0xf7) },
    /a packed part that is cut off or changed: get the file again/,
  ],
  [
    'PackBits that is none',
    { packing: 32_773, strip: new Uint8Array(500).fill(100) },
    /a packed part that is cut off or changed: get the file again/,
  ],
  [
    'Zstandard',
    { packing: 50_000 },
    /heights packed by Zstandard, which is not read: save it without packing, or packed by Deflate, LZW or PackBits/,
  ],
])('%s is refused with its mend', async (_what, change, says) => {
  expect(await refusal(made(change))).toMatch(says);
});

test('a bomb of Deflate gets no more room than its cells: 200 MB of zeros in one strip are read as the 8 kB that belong there', async () => {
  const bomb = zlibSync(new Uint8Array(200_000_000), { level: 1 });
  const before = process.memoryUsage().arrayBuffers;
  let most = 0;
  const watch = setInterval(() => {
    most = Math.max(most, process.memoryUsage().arrayBuffers - before);
  }, 1);
  const grid = await read(made({ packing: 8, strip: bomb }));
  clearInterval(watch);
  expect(grid.heightsM.every((h) => h === 0)).toBe(true);
  expect(most).toBeLessThan(50_000_000);
});

test('a file is taken for a TIFF by its first four bytes, whatever it is named', () => {
  expect(isTiff(made())).toBe(true);
  expect(isTiff(byGdal('lzw-big-endian'))).toBe(true);
  expect(isTiff(new TextEncoder().encode('ncols 40').buffer as ArrayBuffer)).toBe(false);
  expect(isTiff(new ArrayBuffer(2))).toBe(false);
});
