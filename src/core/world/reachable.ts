import type { MapPoint } from '../units/frames';
import { valueAt } from './grid';
import { type CostField, spreadCost, wayTo } from './leastCost';
import { paceFactor, slopePace, walkable } from './walking';
import type { World } from './world';

export type Reachable = MapPoint & { readonly seconds: number };

/** Ground as a walker weighs it: squares, the height of their middles, and the pace there whatever the slope. */
export type WalkGrid = { readonly side: number; readonly squareM: number; readonly heightM: Float32Array; readonly pace: Float32Array };

const grids = new WeakMap<World, WalkGrid>();

/** Squares of about 20 m, made once a world. */
export function walkGrid(world: World): WalkGrid {
  const known = grids.get(world);
  if (known) return known;
  const side = Math.max(20, Math.min(320, Math.round(world.sizeM / 20)));
  const squareM = world.sizeM / side;
  const heightM = new Float32Array(side * side);
  const pace = new Float32Array(side * side);
  for (let i = 0; i < side * side; i++) {
    const at = middleOf({ side, squareM }, i);
    heightM[i] = valueAt(world.groundM, at.eM, at.nM);
    pace[i] = paceFactor(world, at);
  }
  const grid = { side, squareM, heightM, pace };
  grids.set(world, grid);
  return grid;
}

export const middleOf = ({ side, squareM }: Pick<WalkGrid, 'side' | 'squareM'>, square: number): MapPoint => ({
  eM: ((square % side) + 0.5) * squareM,
  nM: (Math.floor(square / side) + 0.5) * squareM,
});

export function squareOf({ side, squareM }: Pick<WalkGrid, 'side' | 'squareM'>, { eM, nM }: MapPoint): number {
  const column = Math.min(side - 1, Math.max(0, Math.floor(eM / squareM)));
  return Math.min(side - 1, Math.max(0, Math.floor(nM / squareM))) * side + column;
}

/** Seconds of a move from the middle of square `a` to that of its neighbour `b`; Infinity where nobody walks. */
function moveSeconds({ side, squareM, heightM, pace }: WalkGrid, paceMPerS: number): (a: number, b: number, run: number) => number {
  return (a, b, run) => {
    // A knight's move passes a third square: it must not jump a river or a wall of a house.
    if (pace[b] === 0 || (run > 2 && pace[between(a, b, side)] === 0)) return Number.POSITIVE_INFINITY;
    const lengthM = run * squareM;
    const footing = pace[a]! > 0 ? (pace[a]! + pace[b]!) / 2 : pace[b]!;
    return lengthM / (paceMPerS * footing * slopePace((heightM[b]! - heightM[a]!) / lengthM));
  };
}

/** Seconds on foot from a place to every square, Infinity where `seconds` is not enough or no way leads. */
function walkTimes(
  world: World,
  from: MapPoint,
  seconds: number,
  paceMPerS: number,
  isGoal?: (square: number) => boolean,
): CostField & { readonly goal: number } {
  const grid = walkGrid(world);
  return spreadCost({ side: grid.side, cost: moveSeconds(grid, paceMPerS) }, [squareOf(grid, from)], seconds, isGoal);
}

/** Seconds on foot to one place from any other, uphill and downhill told apart; Infinity where no way leads. */
export function walkSecondsTo(world: World, to: MapPoint, paceMPerS = 1.4): (from: MapPoint) => number {
  const grid = walkGrid(world);
  const goal = squareOf(grid, to);
  const forward = moveSeconds(grid, paceMPerS);
  // The goal's own square may be a pond's rim: then its neighbour's footing counts, as at the start of a walk.
  const cost = (a: number, b: number, run: number) => (a === goal && grid.pace[goal] === 0 ? forward(goal, b, run) : forward(b, a, run));
  const { costTo } = spreadCost({ side: grid.side, cost }, [goal]);
  return (from) => costTo[squareOf(grid, from)]!;
}

function between(a: number, b: number, side: number): number {
  const column = Math.round(((a % side) + (b % side)) / 2);
  return Math.round((Math.floor(a / side) + Math.floor(b / side)) / 2) * side + column;
}

/**
 * Places within `seconds` on foot, the start's own square among them: middles of squares of about 20 m, with the time to each.
 * @param paceMPerS pace on level open ground
 */
export function reachableWithin(world: World, from: MapPoint, seconds: number, paceMPerS = 1.4): Reachable[] {
  const grid = walkGrid(world);
  const { costTo } = walkTimes(world, from, seconds, paceMPerS);
  const places: Reachable[] = [];
  for (let i = 0; i < costTo.length; i++) {
    if (costTo[i] === Number.POSITIVE_INFINITY) continue;
    const at = middleOf(grid, i);
    if (walkable(world, at) || costTo[i] === 0) places.push({ ...at, seconds: costTo[i]! });
  }
  return places;
}

/** The quickest way on foot: its points (the two places themselves at the ends) and its time; undefined where no way leads. */
export function quickestWalk(
  world: World,
  from: MapPoint,
  to: MapPoint,
  paceMPerS = 1.4,
): { readonly points: readonly MapPoint[]; readonly seconds: number } | undefined {
  const grid = walkGrid(world);
  const goal = squareOf(grid, to);
  const field = walkTimes(world, from, Number.POSITIVE_INFINITY, paceMPerS, (square) => square === goal);
  if (field.goal < 0) return undefined;
  const inner = wayTo(field, goal).slice(1, -1);
  return { points: [from, ...inner.map((square) => middleOf(grid, square)), to], seconds: field.costTo[goal]! };
}
