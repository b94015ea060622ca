import { InputFaults } from '../scenario/faults';
import { cellInMetres, type ElevationGrid, FOOT_M, LAND_M, MOST_CELLS, sizeTrouble } from './elevationGrid';

/** Largest text that is read, characters. */
export const LONGEST_GRID = 40_000_000;
const HEADER_KEYS = ['ncols', 'nrows', 'xllcorner', 'xllcenter', 'yllcorner', 'yllcenter', 'cellsize', 'dx', 'dy', 'nodata_value'];
/** Cells smaller than this between places on the globe are degrees. */
const DEGREES_UNDER = 0.1;

export type HeightUnit = 'metres' | 'feet';

type Header = Readonly<Record<string, number>>;

/**
 * Heights from the text of an ESRI ASCII grid: a header of names and numbers, then rows from the north. `told` hears the share that is read.
 * @throws InputFaults for a header that is not one, too many cells, too few or too many numbers, heights beyond the Earth's
 * @source the format as its maker describes it (ESRI ASCII raster)
 */
export function readEsriGrid(
  file: string,
  text: string,
  unit: HeightUnit = 'metres',
  told: (share: number) => void = () => {},
): ElevationGrid {
  const refuse = (path: string, found: string, mend: string) => new InputFaults([{ file, path, found, mend }]);
  if (text.length > LONGEST_GRID)
    throw refuse('', `${text.length} characters, more than the ${LONGEST_GRID} that are read`, 'cut a smaller piece out of the file');
  const words = wordsOf(text);
  const header = headerOf(words, refuse);
  const { ncols: columns = Number.NaN, nrows: rows = Number.NaN } = header;
  const trouble = sizeTrouble({ columns, rows });
  if (trouble) throw refuse('ncols, nrows', trouble, `cut a piece of 2 by 2 to ${MOST_CELLS} cells out of the file`);
  const cell = cellOf(header, refuse);
  const heightsM = new Float32Array(columns * rows);
  const noData = header['nodata_value'] ?? -9_999;
  const perUnit = unit === 'feet' ? FOOT_M : 1;
  for (let row = rows - 1; row >= 0; row--) {
    for (let column = 0; column < columns; column++) {
      const value = words.next();
      const where = `row ${rows - row}, column ${column + 1}`;
      if (value === null)
        throw refuse(
          where,
          `the file ends after ${(rows - 1 - row) * columns + column} of ${rows * columns} heights`,
          'get the whole file again',
        );
      const heightM = value === noData ? Number.NaN : value * perUnit;
      if (Number.isNaN(value) || heightM < LAND_M[0] || heightM > LAND_M[1])
        throw refuse(
          where,
          Number.isNaN(value) ? 'no number' : `a height of ${value}`,
          'name the value of missing heights in NODATA_value, take the heights as feet if they are, or mend the file there',
        );
      heightsM[row * columns + column] = heightM;
    }
    if (row % 64 === 0) told((rows - row) / rows);
  }
  if (words.next() !== null) throw refuse('', `more than ${rows * columns} heights`, 'mend ncols and nrows, or get the file again');
  return { columns, rows, cellEastM: cell.eastM, cellNorthM: cell.northM, heightsM, latitudeDeg: cell.latitudeDeg };
}

type Refuse = (path: string, found: string, mend: string) => InputFaults;

function headerOf(words: Words, refuse: Refuse): Header {
  const header: Record<string, number> = Object.create(null);
  for (;;) {
    const name = words.name();
    if (name === null) break;
    if (!HEADER_KEYS.includes(name))
      throw refuse(
        `"${name.slice(0, 20)}"`,
        'a line that no header of an ESRI ASCII grid has',
        'give an ESRI ASCII grid (.asc) or a GeoTIFF (.tif)',
      );
    if (header[name] !== undefined) throw refuse(name, 'named twice', 'keep one of the two lines');
    const value = words.next();
    if (value === null || !Number.isFinite(value)) throw refuse(name, 'no number', `write a number after ${name}`);
    header[name] = value;
  }
  return header;
}

function cellOf(header: Header, refuse: Refuse): { eastM: number; northM: number; latitudeDeg: number | null } {
  const [east, north] = [header['cellsize'] ?? header['dx'], header['cellsize'] ?? header['dy']];
  if (!(east! > 0) || !(north! > 0)) throw refuse('cellsize', 'no cell size over 0', 'write the size of a cell after cellsize');
  const [x, y] = [header['xllcorner'] ?? header['xllcenter'], header['yllcorner'] ?? header['yllcenter']];
  const onGlobe = Math.abs(x ?? 999) <= 360 && Math.abs(y ?? 999) <= 90;
  if (!(east! < DEGREES_UNDER && onGlobe)) return { eastM: east!, northM: north!, latitudeDeg: null };
  const latitudeDeg = y! + (north! * header['nrows']!) / 2;
  const metres = cellInMetres({ east: east!, north: north! }, latitudeDeg);
  return { eastM: metres.east, northM: metres.north, latitudeDeg };
}

type Words = {
  /** The next number, NaN for a word that is none, `null` at the end. */
  readonly next: () => number | null;
  /** The next word in small letters if it begins with a letter; `null` where a number or the end comes. */
  readonly name: () => string | null;
};

const SPACE = 32;

/** Words one after another without a list of them: a grid has millions. */
function wordsOf(text: string): Words {
  let at = 0;
  const skip = () => {
    while (at < text.length && text.charCodeAt(at) <= SPACE) at++;
  };
  const word = () => {
    const from = at;
    while (at < text.length && text.charCodeAt(at) > SPACE) at++;
    return text.slice(from, at);
  };
  return {
    next() {
      skip();
      return at >= text.length ? null : Number(word());
    },
    name() {
      skip();
      return /[a-z_]/i.test(text.charAt(at)) && !/^nan\b/i.test(text.slice(at, at + 4)) ? word().toLowerCase() : null;
    },
  };
}
