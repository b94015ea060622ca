import { randomFor } from '../random/draw';
import type { Land } from './terrain';

type Basin = { readonly outlet: number; readonly riseM: number; readonly cells: readonly number[] };

/** A lake aims at this share of the map, and never takes more. */
const WISHED_SHARE = 0.013;
const TRIES = 90;

/** Cells that drain into each cell, as a linked list. */
function donorsOf(receiver: Int32Array): { readonly first: Int32Array; readonly next: Int32Array } {
  const first = new Int32Array(receiver.length).fill(-1);
  const next = new Int32Array(receiver.length).fill(-1);
  for (let i = 0; i < receiver.length; i++) {
    const to = receiver[i]!;
    if (to === i) continue;
    next[i] = first[to]!;
    first[to] = i;
  }
  return { first, next };
}

/** Cells above the outlet that stand no higher over it than `riseM`, found by walking upstream. */
function upstreamBelow(land: Land, donors: ReturnType<typeof donorsOf>, outlet: number, riseM: number, most: number): number[] {
  const topM = land.groundM[outlet]! + riseM;
  const found = [outlet];
  for (let at = 0; at < found.length && found.length <= most; at++)
    for (let donor = donors.first[found[at]!]!; donor >= 0; donor = donors.next[donor]!)
      if (land.groundM[donor]! <= topM) found.push(donor);
  return found;
}

/** The best of many drawn places: the most water for the least digging, round rather than long. */
function bestBasin(land: Land, random: () => number, taken: Uint8Array, donors: ReturnType<typeof donorsOf>): Basin | undefined {
  const { cells, drainage } = land;
  const all = cells * cells;
  const most = WISHED_SHARE * all;
  let best: Basin | undefined;
  let bestScore = 0;
  for (let i = 0; i < TRIES; i++) {
    let outlet = Math.floor(random() * all);
    // From a drawn place go down to where enough land drains to feed a lake.
    while (drainage.area[outlet]! < 0.03 * all && drainage.receiver[outlet] !== outlet) outlet = drainage.receiver[outlet]!;
    for (let down = Math.floor(random() * 40); down > 0; down--) outlet = drainage.receiver[outlet]!;
    const column = outlet % cells;
    const row = (outlet - column) / cells;
    const rim = Math.min(column, row, cells - 1 - column, cells - 1 - row);
    if (rim < 0.06 * cells || taken[outlet]) continue;
    for (const riseM of [1, 1.7, 2.6, 3.8, 5.5, 8]) {
      const found = upstreamBelow(land, donors, outlet, riseM, most);
      if (found.length > most || found.some((cell) => taken[cell])) break;
      const score = (found.length * Math.sqrt(roundness(found, cells))) / (2 + riseM);
      if (score <= bestScore) continue;
      bestScore = score;
      best = { outlet, riseM, cells: found };
    }
  }
  return best;
}

/** Cells over the square of the wider side of the box around them: 1 fills the square. */
function roundness(found: readonly number[], cells: number): number {
  let [west, east, south, north] = [cells, 0, cells, 0];
  for (const cell of found) {
    const column = cell % cells;
    const row = (cell - column) / cells;
    west = Math.min(west, column);
    east = Math.max(east, column);
    south = Math.min(south, row);
    north = Math.max(north, row);
  }
  const side = Math.max(east - west, north - south) + 1;
  return found.length / (side * side);
}

/**
 * Digs lakes into valley floors. The whole catchment above an outlet is pressed down by one rising function of height,
 * so water still runs the same way, the lake is level with its outlet and the banks keep their shape.
 * Changes `land.groundM`. @returns 1 where a lake lies
 */
export function digLakes(seed: string, wished: number, land: Land): Uint8Array {
  const { groundM, drainage, cells } = land;
  const isLake = new Uint8Array(groundM.length);
  if (wished === 0) return isLake;
  const taken = Uint8Array.from(land.isSea);
  const donors = donorsOf(drainage.receiver);
  for (let lake = 0; lake < wished; lake++) {
    const basin = bestBasin(land, randomFor(seed, 'water', lake), taken, donors);
    if (!basin || basin.cells.length < 12) continue;
    const levelM = groundM[basin.outlet]!;
    const { riseM } = basin;
    for (const cell of basin.cells) isLake[cell] = 1;
    for (const cell of upstreamBelow(land, donors, basin.outlet, 3 * riseM, Number.POSITIVE_INFINITY)) {
      const overM = groundM[cell]! - levelM;
      groundM[cell] = levelM + Math.max(0, 1.5 * (overM - riseM));
      keepApart(taken, cell, cells, Math.max(3, Math.round(0.02 * cells)));
    }
  }
  return isLake;
}

/** Marks a square around a cell, so that two lakes never touch. */
function keepApart(taken: Uint8Array, cell: number, cells: number, reach: number): void {
  const column = cell % cells;
  const row = (cell - column) / cells;
  for (const r of [row - reach, row, row + reach])
    for (const c of [column - reach, column, column + reach]) if (r >= 0 && c >= 0 && r < cells && c < cells) taken[r * cells + c] = 1;
}
