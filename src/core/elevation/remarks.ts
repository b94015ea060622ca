import { type ElevationGrid, factsOf } from './elevationGrid';
import { medianSlopeDeg } from './steepness';
import { heightM, LEAST_SIDE_M, widthM } from './window';

/** Half of a land of hand-held tracking is never this steep: feet read as metres or cells of another size are. */
const TOO_STEEP_DEG = 40;
/** Cells wider than this hide the knolls and banks that a walk is about. */
const COARSE_M = 35;
/** Cells wider than this hold no shape of the land that a walk of some kilometres meets. */
const COARSEST_M = 250;

/** What is odd about a grid that can be used all the same, each in a sentence with what to do about it. */
export function remarksOn(grid: ElevationGrid): readonly string[] {
  const { cellEastM, cellNorthM, latitudeDeg } = grid;
  const cellM = Math.max(cellEastM, cellNorthM);
  const said: string[] = [];
  if (latitudeDeg !== null)
    said.push(
      `The file is in degrees or on the grid of web maps: its cells were measured out at ${Math.abs(latitudeDeg).toFixed(1)}° ${latitudeDeg < 0 ? 'south' : 'north'}, good to 0.2 % over a map.`,
    );
  const steepDeg = medianSlopeDeg(grid);
  if (steepDeg > TOO_STEEP_DEG)
    said.push(
      `Half of the land is steeper than ${Math.round(steepDeg)}°. If the heights are in feet, say so here; else look up what unit the cell size has.`,
    );
  if (cellM > COARSE_M)
    said.push(
      `Cells of ${Math.round(cellM)} m: the land between them is drawn smooth, and a bank or a gully that bends a signal in the field may be missing.`,
    );
  const { lowM, highM } = factsOf(grid);
  if (highM - lowM < 1) said.push('The land is as flat as a table: look whether this is the file you meant.');
  return said;
}

/** What keeps a grid from being used at all, with its mend; `null` where nothing does. */
export function gridTrouble(grid: ElevationGrid): { readonly found: string; readonly mend: string } | null {
  const { holes } = factsOf(grid);
  if (holes === grid.heightsM.length) return { found: 'no cell has a height', mend: 'look up the value of missing heights in the file' };
  const cellM = Math.max(grid.cellEastM, grid.cellNorthM);
  if (cellM > COARSEST_M)
    return {
      found: `cells of ${cellM > 1e6 ? cellM.toExponential(1) : Math.round(cellM)} m, too coarse to walk on`,
      mend: `take a survey of cells up to ${COARSEST_M} m, better 30 m or finer`,
    };
  const [wide, high] = [Math.round(widthM(grid)), Math.round(heightM(grid))];
  if (Math.min(wide, high) >= LEAST_SIDE_M) return null;
  return {
    found: `${wide} by ${high} m of ground, and an exercise takes ${LEAST_SIDE_M} m at least`,
    mend: 'take a larger piece out of the survey, or look whether the cell size is in metres',
  };
}
