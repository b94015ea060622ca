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
  const { receiver, area, downstreamFirst } = land.drainage;
  const headArea = HEAD_AREA_M2 / (land.cellM * land.cellM);
  const isTaken = new Uint8Array(area.length);
  const largestDonor = new Int32Array(area.length).fill(-1);
  for (let i = 0; i < area.length; i++) {
    const to = receiver[i]!;
    if (to !== i && (largestDonor[to]! < 0 || area[i]! > area[largestDonor[to]!]!)) largestDonor[to] = i;
  }
  const isWater = (cell: number) => land.isLake[cell] === 1 || land.isSea[cell] === 1;
  const largestFirst: number[] = [];
  for (const cell of downstreamFirst) if (area[cell]! >= headArea && !isWater(cell)) largestFirst.push(cell);
  largestFirst.sort((a, b) => area[b]! - area[a]! || a - b);
  const reachesWater = (cell: number): boolean => {
    const to = receiver[cell]!;
    return to === cell || isTaken[to] === 1 || isWater(to);
  };
  const courses: number[][] = [];
  while (courses.length < wished) {
    const mouth = largestFirst.find((cell) => !isTaken[cell] && reachesWater(cell));
    if (mouth === undefined) break;
    const up = receiver[mouth] === mouth ? [] : [receiver[mouth]!];
    for (let cell = mouth; cell >= 0 && !isWater(cell) && area[cell]! >= headArea; cell = largestDonor[cell]!) {
      isTaken[cell] = 1;
      up.push(cell);
    }
    if (up.length * land.cellM >= SHORTEST_M) courses.push(up.reverse());
  }
  return courses;
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
