import { cellInMetres, FOOT_M, type Shape } from './elevationGrid';

/** What a GeoTIFF says of where its cells lie, as its tags and keys have it; `undefined` where it says nothing. */
export type TiffPlace = Shape & {
  /** East, north and height of one cell. */
  readonly pixelScale?: ArrayLike<number> | undefined;
  /** Column, row, level and the place that they lie at. */
  readonly tiePoint?: ArrayLike<number> | undefined;
  readonly transformation?: ArrayLike<number> | undefined;
  /** 1 for a map's grid, 2 for latitude and longitude. */
  readonly model?: number | undefined;
  /** Code of the map's grid. */
  readonly projection?: number | undefined;
  readonly linearUnit?: number | undefined;
  readonly angularUnit?: number | undefined;
  readonly verticalUnit?: number | undefined;
};

export type TiffCells = {
  readonly eastM: number;
  readonly northM: number;
  readonly latitudeDeg: number | null;
  /** Metres of the unit that the file itself gives its heights in. */
  readonly perHeightM: number | null;
};
export type Refused = { readonly found: string; readonly mend: string };

const SURVEY_FOOT_M = 1_200 / 3_937;
/** Codes of units in the EPSG register. */
const UNITS_M: Readonly<Record<number, number>> = { 9001: 1, 9002: FOOT_M, 9003: SURVEY_FOOT_M };
const DEGREE = 9102;
const GEOGRAPHIC = 2;
/** The grids of web maps, and the radius of their sphere, metres. */
const WEB_MAPS: readonly number[] = [3857, 900913, 3785];
const SPHERE_M = 6_378_137;
/** A cell smaller than this between places on the globe is in degrees. */
const DEGREES_UNDER = 0.1;

/** Cells in metres, or why they can't be told. @source OGC GeoTIFF standard 1.1, tags 33550, 33922, 34264 and keys 1024, 2054, 3072, 3076, 4099 */
export function tiffCells(place: TiffPlace): TiffCells | Refused {
  const cell = cellSizes(place);
  if ('found' in cell) return cell;
  const { east, north, top } = cell;
  const perHeightM = place.verticalUnit === undefined ? null : (UNITS_M[place.verticalUnit] ?? null);
  const middle = top - (place.rows * north) / 2;
  const onGlobe = Math.abs(top) <= 90 && Math.max(east, north) < DEGREES_UNDER;
  if (place.model === GEOGRAPHIC || (place.model === undefined && onGlobe)) {
    if ((place.angularUnit ?? DEGREE) !== DEGREE || Math.abs(middle) > 89)
      return { found: 'places in an angle that is not degrees', mend: 'save it in degrees, or on a grid in metres such as UTM' };
    const metres = cellInMetres({ east, north }, middle);
    return { eastM: metres.east, northM: metres.north, latitudeDeg: middle, perHeightM };
  }
  if (place.projection !== undefined && WEB_MAPS.includes(place.projection)) {
    const latitudeRad = Math.atan(Math.sinh(middle / SPHERE_M));
    const shrunk = Math.cos(latitudeRad); // the grid of web maps stretches every length by one over this
    return { eastM: east * shrunk, northM: north * shrunk, latitudeDeg: (latitudeRad * 180) / Math.PI, perHeightM };
  }
  const unitM = UNITS_M[place.linearUnit ?? 9001];
  if (unitM === undefined) return { found: `cells in the unit ${place.linearUnit}`, mend: 'save it on a grid in metres or feet' };
  return { eastM: east * unitM, northM: north * unitM, latitudeDeg: null, perHeightM };
}

type Sizes = { readonly east: number; readonly north: number; readonly top: number };

function cellSizes({ pixelScale, tiePoint, transformation: t }: TiffPlace): Sizes | Refused {
  if (t && t.length >= 8) {
    if (t[1] !== 0 || t[4] !== 0 || !(t[0]! > 0) || !(t[5]! < 0))
      return { found: 'a grid that is turned or mirrored', mend: 'save it with north up' };
    return { east: t[0]!, north: -t[5]!, top: t[7]! };
  }
  if (!pixelScale || !(pixelScale[0]! > 0) || !(pixelScale[1]! > 0) || !tiePoint || tiePoint.length < 6)
    return { found: 'no size or place of its cells: a picture, no GeoTIFF', mend: 'save it as GeoTIFF, or give an ESRI ASCII grid' };
  return { east: pixelScale[0]!, north: pixelScale[1]!, top: tiePoint[4]! + tiePoint[1]! * pixelScale[1]! };
}
