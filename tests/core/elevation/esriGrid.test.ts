import { expect, test } from 'vitest';
import { factsOf, MOST_CELLS } from '../../../src/core/elevation/elevationGrid';
import { readEsriGrid } from '../../../src/core/elevation/esriGrid';
import { InputFaults } from '../../../src/core/scenario/faults';
import { realTileText } from './realTile';

const HEAD = 'ncols 3\nnrows 2\nxllcorner 500000\nyllcorner 4000000\ncellsize 25\nNODATA_value -9999\n';
const faultOf = (text: string): string => {
  try {
    readEsriGrid('hill.asc', text);
  } catch (error) {
    if (error instanceof InputFaults) return error.faults.map(({ path, found, mend }) => `${path}: ${found}: ${mend}`).join('; ');
    throw error;
  }
  return 'none';
};

// The order of rows and the meaning of the header as the maker of the format describes them (ESRI ASCII raster).
test('rows come from the north, missing heights are holes, metres stay metres', () => {
  const grid = readEsriGrid('hill.asc', `${HEAD}10 20 30\r\n40 -9999 60.5\n`);
  expect(grid).toMatchObject({ columns: 3, rows: 2, cellEastM: 25, cellNorthM: 25, latitudeDeg: null });
  expect([...grid.heightsM]).toEqual([40, Number.NaN, 60.5, 10, 20, 30]);
  expect(factsOf(grid)).toEqual({ lowM: 10, highM: 60.5, holes: 1 });
});

test('feet become metres, dx and dy may differ, header names may be in capitals and in any order', () => {
  const grid = readEsriGrid('hill.asc', 'NROWS 2\nNCOLS 2\nDX 10\nDY 20\nXLLCENTER 500\nYLLCENTER 900\n100 200 300 400', 'feet');
  expect(grid.heightsM[0]).toBeCloseTo(91.44, 4);
  expect([grid.cellEastM, grid.cellNorthM]).toEqual([10, 20]);
});

test('a grid in degrees is measured out at its latitude', () => {
  const { cellEastM, cellNorthM, latitudeDeg } = readEsriGrid('tile.asc', realTileText(0, 1_000, 60, 100));
  expect(latitudeDeg).toBeCloseTo(57.975, 2);
  // three seconds of arc: 92.8 m along the meridian at 58 degrees and 49.3 m across it on the WGS 84 ellipsoid (computed from its axes)
  expect(Math.abs(cellNorthM / 92.81 - 1)).toBeLessThan(0.003);
  expect(Math.abs(cellEastM / 49.27 - 1)).toBeLessThan(0.005);
});

test.each([
  ['', /ncols, nrows: NaN by NaN cells/],
  ['<svg onload=alert(1)>', /ncols, nrows/],
  ['{"format": 1}', /ncols, nrows/],
  ['ncols 3\nnrows 2\n1 2 3 4 5 6', /cellsize: no cell size over 0/],
  ['ncols 3\nncols 3\n', /named twice/],
  ['ncols x\n', /no number/],
  ['__proto__ 3\nncols 3', /a line that no header/],
  [`${HEAD}1 2 3 4 5`, /row 2, column 3: the file ends after 5 of 6 heights/],
  [`${HEAD}1 2 3 4 5 6 7`, /more than 6 heights/],
  [`${HEAD}1 2 3 4 5 x`, /row 2, column 3: no number/],
  [`${HEAD}1 2 3 4 5 1e30`, /a height of 1e\+30/],
  ['ncols 100000\nnrows 100000\ncellsize 1\n1', new RegExp(`more than the ${MOST_CELLS}`)],
  ['ncols 2.5\nnrows 2\ncellsize 1\n1', /2\.5 by 2 cells/],
  ['ncols -3\nnrows 2\ncellsize 1\n1', /-3 by 2 cells/],
])('%j is refused with what was found and the mend', (text, said) => {
  expect(faultOf(text)).toMatch(said);
});

test('random spoilings of a grid are read or refused, never anything else', () => {
  const good = `${HEAD}10 20 30 40 50 60`;
  for (let i = 0; i < 3_000; i++) {
    const at = (i * 7) % good.length;
    const letter = String.fromCharCode((i * 31) % 128);
    faultOf(good.slice(0, at) + letter + good.slice(at + (i % 3)));
  }
});
