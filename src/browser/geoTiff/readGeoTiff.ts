import { fromArrayBuffer, type GeoTIFFImage } from 'geotiff';
import { type ElevationGrid, FOOT_M, LAND_M, MOST_CELLS, sizeTrouble } from '../../core/elevation/elevationGrid';
import type { HeightUnit } from '../../core/elevation/esriGrid';
import { tiffCells } from '../../core/elevation/tiffCells';
import { InputFaults } from '../../core/scenario/faults';
import { MOST_BLOCK_BYTES, packingName, READ_PACKINGS } from './unpackers';

/** Heights this low are marks for "no height" in files that don't say so: no land lies there, and it is what programs write. */
const NEVER_LAND = [-9_999, -32_767, -32_768] as const;
/** So many rows at a time, to be told of. */
const ROWS_AT_ONCE = 64;
type Refuse = (found: string, mend: string, path?: string) => InputFaults;

/**
 * Heights from the first band of a GeoTIFF. `unit` counts where the file itself does not name one; `told` hears the share that is read.
 * @throws InputFaults for what is no GeoTIFF, is packed in a way that is not read, has too many cells or heights beyond the Earth
 */
export async function readGeoTiff(
  file: string,
  bytes: ArrayBuffer,
  unit: HeightUnit,
  told: (share: number) => void,
): Promise<ElevationGrid> {
  const refuse: Refuse = (found, mend, path = '') => new InputFaults([{ file, path, found, mend }]);
  try {
    const image = await (await fromArrayBuffer(bytes)).getImage();
    return await gridOf(image, unit, refuse, told);
  } catch (fault) {
    if (fault instanceof InputFaults) throw fault;
    throw refuse(`a TIFF that can’t be read: ${fault instanceof Error ? fault.message : String(fault)}`, 'get the file again');
  }
}

async function gridOf(image: GeoTIFFImage, unit: HeightUnit, refuse: Refuse, told: (share: number) => void): Promise<ElevationGrid> {
  const [columns, rows] = [image.getWidth(), image.getHeight()];
  const trouble = sizeTrouble({ columns, rows });
  if (trouble) throw refuse(trouble, `cut a piece of 2 by 2 to ${MOST_CELLS} cells out of the file`);
  await checkPacking(image, refuse);
  const tags = image.fileDirectory;
  const keys = image.getGeoKeys() ?? {};
  const cells = tiffCells({
    columns,
    rows,
    pixelScale: tags.getValue('ModelPixelScale'),
    tiePoint: tags.getValue('ModelTiepoint'),
    transformation: tags.getValue('ModelTransformation'),
    model: keys.GTModelTypeGeoKey,
    projection: keys.ProjectedCSTypeGeoKey,
    linearUnit: keys.ProjLinearUnitsGeoKey,
    angularUnit: keys.GeogAngularUnitsGeoKey,
    verticalUnit: keys.VerticalUnitsGeoKey,
  });
  if ('found' in cells) throw refuse(cells.found, cells.mend);
  const perUnitM = cells.perHeightM ?? (unit === 'feet' ? FOOT_M : 1);
  const heightsM = new Float32Array(columns * rows);
  const noData = image.getGDALNoData();
  const step = Math.max(1, Math.ceil(ROWS_AT_ONCE / image.getTileHeight())) * image.getTileHeight();
  for (let from = 0; from < rows; from += step) {
    const to = Math.min(rows, from + step);
    const [band] = (await image.readRasters({ window: [0, from, columns, to], samples: [0] })) as unknown as [ArrayLike<number>];
    for (let i = 0; i < band.length; i++) {
      const row = from + Math.floor(i / columns);
      const heightM = landHeightM(band[i]!, noData, perUnitM);
      if (heightM === null)
        throw refuse(
          `a height of ${band[i]}`,
          'name the value of missing heights in the file, or take the heights as feet if they are',
          `row ${row + 1}, column ${(i % columns) + 1}`,
        );
      heightsM[(rows - 1 - row) * columns + (i % columns)] = heightM;
    }
    told(to / rows);
  }
  return { columns, rows, cellEastM: cells.eastM, cellNorthM: cells.northM, heightsM, latitudeDeg: cells.latitudeDeg };
}

/** NaN for a mark of "no height"; `null` for what is neither that nor land. */
function landHeightM(value: number, noData: number | null, perUnitM: number): number | null {
  if (Number.isNaN(value) || value === noData || NEVER_LAND.includes(value as -9_999) || value < -1e30 || value > 1e30) return Number.NaN;
  const heightM = value * perUnitM;
  return heightM < LAND_M[0] || heightM > LAND_M[1] ? null : heightM;
}

/** Refuses what would need more than a grid's room, and what the program does not unpack. */
async function checkPacking(image: GeoTIFFImage, refuse: Refuse): Promise<void> {
  const tags = image.fileDirectory;
  const packing = Number(tags.getValue('Compression') ?? 1);
  if (!READ_PACKINGS.includes(packing))
    throw refuse(
      `heights packed by ${packingName(packing)}, which is not read`,
      'save it without packing, or packed by Deflate, LZW or PackBits',
    );
  const bands = image.getSamplesPerPixel();
  if (bands !== 1) throw refuse(`${bands} bands: a picture or several grids in one`, 'save the band of the heights by itself');
  const bits = image.getBitsPerSample();
  const known = image.getSampleFormat() === 3 ? [32, 64] : [8, 16, 32];
  if (!known.includes(bits)) throw refuse(`numbers of ${bits} bits`, 'save the heights as whole numbers of 16 bits or as floats of 32');
  const predictor = Number((await tags.loadValue('Predictor')) ?? 1);
  if (![1, 2, 3].includes(predictor) || (predictor > 1 && !image.littleEndian && bits > 8))
    throw refuse('differences packed in an order that is not read', 'save it without a predictor');
  const blockBytes = (image.getTileWidth() * image.getTileHeight() * bits) / 8;
  if (!(blockBytes > 0 && blockBytes <= MOST_BLOCK_BYTES))
    throw refuse(`parts of ${image.getTileWidth()} by ${image.getTileHeight()} cells`, 'save it in tiles of 512 by 512 cells or in strips');
}
