/** Metres of a foot, and of a degree along a meridian (mean of the WGS 84 ellipsoid, value from memory). */
export const FOOT_M = 0.3048;
const METRES_PER_DEGREE = 111_195;

/** The deepest sea and the highest mountain, metres, with room: no land lies beyond. */
export const LAND_M = [-12_000, 9_500] as const;

/** Largest grid that is read: 25 cells of 1 m for each of a 2 km map, or 60 km of 30 m cells. */
export const MOST_CELLS = 4_000_000;

/**
 * Heights from an elevation file: row-major from the south-west corner, metres above sea level, NaN where the file has none.
 * Cells need not be square.
 */
export type ElevationGrid = {
  readonly columns: number;
  readonly rows: number;
  readonly cellEastM: number;
  readonly cellNorthM: number;
  readonly heightsM: Float32Array;
  /** Given in degrees or on a web map's stretched grid: cells were measured out at this latitude. */
  readonly latitudeDeg: number | null;
};

export type Shape = { readonly columns: number; readonly rows: number };

/** Cells of a grid in degrees, in metres at the latitude of its middle: within 0.2 % over a map of 10 km. */
export function cellInMetres(
  cellDeg: { readonly east: number; readonly north: number },
  latitudeDeg: number,
): { east: number; north: number } {
  return {
    east: cellDeg.east * METRES_PER_DEGREE * Math.cos((latitudeDeg * Math.PI) / 180),
    north: cellDeg.north * METRES_PER_DEGREE,
  };
}

/** What is wrong with the size of a grid, before room is made for it; `null` where nothing is. */
export function sizeTrouble({ columns, rows }: Shape): string | null {
  if (!Number.isInteger(columns) || !Number.isInteger(rows) || columns < 2 || rows < 2) return `${columns} by ${rows} cells`;
  if (columns * rows > MOST_CELLS) return `${columns} by ${rows} cells, more than the ${MOST_CELLS} that are read`;
  return null;
}

export type Facts = { readonly lowM: number; readonly highM: number; readonly holes: number };

/** Lowest and highest height, and how many cells have none. */
export function factsOf({ heightsM }: ElevationGrid): Facts {
  let [lowM, highM, holes] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
  for (const h of heightsM) {
    if (Number.isNaN(h)) holes++;
    else {
      if (h < lowM) lowM = h;
      if (h > highM) highM = h;
    }
  }
  return { lowM, highM, holes };
}
