import { MOST_OWN_CELLS } from '../scenario/ownHeights';
import type { ElevationGrid } from './elevationGrid';
import { heightBetween } from './heightBetween';

/** A square piece of an elevation grid: its south-west corner from the grid's own, its side, and the cells it is wanted in, metres. */
export type ElevationWindow = { readonly eastM: number; readonly northM: number; readonly sizeM: number; readonly cellM: number };

/** A side is chosen in such steps, metres: they hold whole cells of 5, 10 and 20 m. */
const SIDE_STEP_M = 100;
/** Holes up to this share of the piece are filled from their rims. */
export const MOST_HOLES_SHARE = 0.05;
/** Sides of a piece, metres. */
export const LEAST_SIDE_M = 1_000;
export const MOST_SIDE_M = 10_000;
const CELL_M = [5, 20] as const;

/** How far a grid reaches, without its heights. */
export type GridExtent = Omit<ElevationGrid, 'heightsM' | 'latitudeDeg'>;

export const widthM = ({ columns, cellEastM }: GridExtent): number => columns * cellEastM;
export const heightM = ({ rows, cellNorthM }: GridExtent): number => rows * cellNorthM;

/** The piece moved and shrunk until it lies inside the grid, its corner on whole metres, its side in steps of 100 m. */
export function insideGrid(grid: GridExtent, { eastM, northM, sizeM, cellM }: ElevationWindow): ElevationWindow {
  const room = Math.floor(Math.min(widthM(grid), heightM(grid)) / SIDE_STEP_M) * SIDE_STEP_M;
  const side = Math.max(LEAST_SIDE_M, Math.min(MOST_SIDE_M, room, Math.round(sizeM / SIDE_STEP_M) * SIDE_STEP_M));
  const held = (at: number, longM: number) => Math.max(0, Math.min(Math.floor(longM - side), Math.round(at)));
  return { eastM: held(eastM, widthM(grid)), northM: held(northM, heightM(grid)), sizeM: side, cellM };
}

/** Cells for a piece of a side, metres: finer ones over 5 km make the file large and the ground slow to make. */
export const usualCellM = (sizeM: number): number => (sizeM > 5_000 ? 20 : 10);

/** What is wrong with a piece, as a text with its mend; `null` where it can be taken. */
export function windowTrouble(grid: GridExtent, { eastM, northM, sizeM, cellM }: ElevationWindow): string | null {
  if (!(sizeM >= LEAST_SIDE_M && sizeM <= MOST_SIDE_M)) return `a side of ${sizeM} m: take ${LEAST_SIDE_M} to ${MOST_SIDE_M}`;
  if (!(cellM >= CELL_M[0] && cellM <= CELL_M[1])) return `cells of ${cellM} m: take ${CELL_M[0]} to ${CELL_M[1]}`;
  if (Math.round(sizeM / cellM) ** 2 > MOST_OWN_CELLS) return `more than ${MOST_OWN_CELLS} cells: take a smaller piece or larger cells`;
  const inside = eastM >= 0 && northM >= 0 && eastM + sizeM <= widthM(grid) + 1 && northM + sizeM <= heightM(grid) + 1;
  return inside
    ? null
    : `the piece reaches past the file's ${Math.round(widthM(grid))} by ${Math.round(heightM(grid))} m: move it or take a smaller one`;
}

export type ClippedHeights = { readonly side: number; readonly heightsM: Float64Array; readonly filled: number };

/**
 * The heights of a piece in cells of its own: smooth between the file's cells, the mean over each cell where the file is finer. Holes are
 * filled from their rims inward. `told` hears the share that is done. @returns a text where more than 5 % of the piece has no height
 * @throws RangeError for a piece that `windowTrouble` refuses
 */
export function clipHeights(
  grid: ElevationGrid,
  piece: ElevationWindow,
  told: (share: number) => void = () => {},
): ClippedHeights | string {
  const trouble = windowTrouble(grid, piece);
  if (trouble) throw new RangeError(trouble);
  const side = Math.round(piece.sizeM / piece.cellM);
  const cellM = piece.sizeM / side;
  const heightsM = new Float64Array(side * side);
  const finer = Math.max(1, Math.min(16, Math.round(cellM / Math.min(grid.cellEastM, grid.cellNorthM))));
  for (let row = 0; row < side; row++) {
    for (let column = 0; column < side; column++) {
      let [sum, count] = [0, 0];
      for (let j = 0; j < finer; j++)
        for (let i = 0; i < finer; i++) {
          const h = heightBetween(
            grid,
            piece.eastM + (column + (i + 0.5) / finer) * cellM,
            piece.northM + (row + (j + 0.5) / finer) * cellM,
          );
          if (Number.isNaN(h)) continue;
          sum += h;
          count++;
        }
      heightsM[row * side + column] = count === 0 ? Number.NaN : sum / count;
    }
    if (row % 16 === 0) told(row / side);
  }
  const holes = heightsM.reduce((count, h) => count + (Number.isNaN(h) ? 1 : 0), 0);
  if (holes > MOST_HOLES_SHARE * heightsM.length)
    return `${Math.round((100 * holes) / heightsM.length)} % of the piece have no height: take another piece`;
  fillHoles(heightsM, side);
  told(1);
  return { side, heightsM, filled: holes };
}

/** Gives each hole that touches a height the mean of those it touches, again and again until none is left. */
function fillHoles(heightsM: Float64Array, side: number): void {
  let holes = [...heightsM.keys()].filter((i) => Number.isNaN(heightsM[i]!));
  while (holes.length > 0) {
    const filled = holes.map((i): [number, number] => [i, meanAround(heightsM, i, side)]).filter(([, h]) => !Number.isNaN(h));
    for (const [i, h] of filled) heightsM[i] = h;
    holes = holes.filter((i) => Number.isNaN(heightsM[i]!));
    if (filled.length === 0) return;
  }
}

function meanAround(heightsM: Float64Array, i: number, side: number): number {
  const [column, row] = [i % side, Math.floor(i / side)];
  let [sum, count] = [0, 0];
  for (const [dx, dy] of [
    [-1, 0],
    [1, 0],
    [0, -1],
    [0, 1],
  ] as const) {
    const [x, y] = [column + dx, row + dy];
    const h = x < 0 || y < 0 || x >= side || y >= side ? Number.NaN : heightsM[y * side + x]!;
    if (Number.isNaN(h)) continue;
    sum += h;
    count++;
  }
  return count === 0 ? Number.NaN : sum / count;
}
