import { smoothStep } from './octaves';
import type { Land } from './terrain';
import type { Stream } from './world';

/** A stream begins where this much land drains together, square metres. */
const HEAD_AREA_M2 = 45_000;
const SHORTEST_M = 220;
/** Vertices this many cells apart: close enough to keep to the bed, far enough to lose the grid's corners. */
const VERTEX_CELLS = 3;

/** Chooses the largest streams, each from its mouth (map edge, sea, lake or a larger stream) up to its head. @returns cells, head first */
function chooseCourses(land: Land, wished: number): number[][] {
  const { receiver, area } = land.drainage;
  const headArea = HEAD_AREA_M2 / (land.cellM * land.cellM);
  const isTaken = new Uint8Array(area.length);
  const isWater = (cell: number) => land.isLake[cell] === 1 || land.isSea[cell] === 1;
  const mouths: number[] = [];
  for (let row = 0; row < land.cells; row++) findMouths(land, row, headArea, mouths);
  const courses: number[][] = [];
  while (courses.length < wished) {
    const mouth = largestOf(mouths, area, isTaken);
    if (mouth < 0) break;
    const up = receiver[mouth] === mouth ? [] : [receiver[mouth]!];
    for (let cell = mouth; cell >= 0 && !isWater(cell) && area[cell]! >= headArea; cell = largestOf(donorsOf(land, cell), area)) {
      isTaken[cell] = 1;
      up.push(cell);
      // What runs into this stream may be a stream of its own.
      for (const donor of donorsOf(land, cell)) if (area[donor]! >= headArea && !isWater(donor)) mouths.push(donor);
    }
    if (up.length * land.cellM >= SHORTEST_M) courses.push(up.reverse());
  }
  return courses;
}

/** Adds the cells of a row where enough water runs off the map or into a lake or the sea. */
function findMouths({ cells, drainage, isLake, isSea }: Land, row: number, headArea: number, mouths: number[]): void {
  const { receiver, area } = drainage;
  for (let cell = row * cells; cell < (row + 1) * cells; cell++) {
    if (area[cell]! < headArea || isLake[cell] === 1 || isSea[cell] === 1) continue;
    const to = receiver[cell]!;
    if (to === cell || isLake[to] === 1 || isSea[to] === 1) mouths.push(cell);
  }
}

/** The cells that drain straight into one, in the order of their indices. A neighbour beyond the grid's side drains elsewhere. */
function donorsOf({ cells, drainage }: Land, cell: number): number[] {
  return [-cells - 1, -cells, 1 - cells, -1, 1, cells - 1, cells, cells + 1]
    .map((step) => cell + step)
    .filter((from) => drainage.receiver[from] === cell);
}

/** The cell with the most water, of equals the first; -1 where none is free. */
function largestOf(among: readonly number[], area: Int32Array, isTaken?: Uint8Array): number {
  let largest = -1;
  for (const cell of among) {
    if (isTaken?.[cell] === 1) continue;
    if (largest < 0 || area[cell]! > area[largest]! || (area[cell] === area[largest] && cell < largest)) largest = cell;
  }
  return largest;
}

/** Sinks the bed under the land beside it, deeper downstream; never under the water or the larger stream it runs into. */
function cutBed(land: Land, course: readonly number[]): void {
  const { groundM, drainage } = land;
  const mouth = course[course.length - 1]!;
  const floorM = drainage.receiver[mouth] === mouth ? Number.NEGATIVE_INFINITY : groundM[mouth]!;
  let bedM = Number.POSITIVE_INFINITY;
  for (const cell of course) {
    if (cell === mouth && floorM === groundM[mouth]) break;
    const hectares = (drainage.area[cell]! * land.cellM * land.cellM) / 10_000;
    const depthM = 0.3 + 1.3 * smoothStep(3, 250, hectares);
    bedM = Math.max(floorM, Math.min(bedM, groundM[cell]! - depthM));
    groundM[cell] = bedM;
  }
}

/**
 * Streams along the valleys, cut into the ground. Their points are cell centres of the drained land,
 * so the ground under successive points never rises. Changes `land.groundM`.
 */
export function runStreams(wished: number, land: Land): Stream[] {
  const courses = chooseCourses(land, wished);
  for (const course of courses) cutBed(land, course);
  return courses.map((course) => ({
    points: course
      .filter((_, i) => i % VERTEX_CELLS === 0 || i === course.length - 1)
      .map((cell) => {
        const column = cell % land.cells;
        return { eM: (column + 0.5) * land.cellM, nM: ((cell - column) / land.cells + 0.5) * land.cellM };
      }),
  }));
}
