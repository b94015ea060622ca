import { LeastFirst } from './leastFirst';

/** Ways over a square grid of squares, cheapest first (Dijkstra 1959). Costs are seconds, metres or any other positive number. */
export type CostGrid = {
  readonly side: number;
  /** Cost of going from the centre of square `from` to that of a neighbour; Infinity where there is no way. `run` is 1, sqrt 2 or sqrt 5 squares. */
  readonly cost: (from: number, to: number, run: number) => number;
  /** A quick figure that `cost` is never under; saves asking for the cost of moves that cannot be the best. */
  readonly atLeast?: (from: number, to: number, run: number) => number;
};
const nothing = (): number => 0;

/** Sixteen neighbours: straight, diagonal and knight's moves, so that a way may bend gently. Steps in column and row, length in squares. */
const MOVE_COLUMN = [1, 0, -1, 0, 1, -1, -1, 1, 2, 1, -1, -2, -2, -1, 1, 2] as const;
const MOVE_ROW = [0, 1, 0, -1, 1, 1, -1, -1, 1, 2, 2, 1, -1, -2, -2, -1] as const;
const MOVE_RUN = MOVE_COLUMN.map((column, i) => Math.sqrt(column * column + MOVE_ROW[i]! * MOVE_ROW[i]!));

export type CostField = { readonly costTo: Float64Array; readonly cameFrom: Int32Array };

/** Least cost from the starts to every square until `isGoal` is met or the cost passes `mostCost`; Infinity where not reached. */
export function spreadCost(
  grid: CostGrid,
  starts: readonly number[],
  mostCost = Number.POSITIVE_INFINITY,
  isGoal: (square: number) => boolean = () => false,
): CostField & { readonly goal: number } {
  const { side, cost, atLeast = nothing } = grid;
  const costTo = new Float64Array(side * side).fill(Number.POSITIVE_INFINITY);
  const cameFrom = new Int32Array(side * side).fill(-1);
  const open = new LeastFirst(side * side);
  for (const start of starts) {
    costTo[start] = 0;
    open.put(start, 0);
  }
  while (!open.isEmpty) {
    const square = open.take();
    if (isGoal(square)) return { costTo, cameFrom, goal: square };
    const soFar = costTo[square]!;
    const column = square % side;
    const row = (square - column) / side;
    for (let k = 0; k < 16; k++) {
      const c = column + MOVE_COLUMN[k]!;
      const r = row + MOVE_ROW[k]!;
      if (c < 0 || r < 0 || c >= side || r >= side) continue;
      const next = r * side + c;
      // Settled squares cannot get cheaper: half of all moves need no cost, and of the others the most a rough one.
      const best = costTo[next]!;
      if (best <= soFar || soFar + atLeast(square, next, MOVE_RUN[k]!) >= best) continue;
      const total = soFar + cost(square, next, MOVE_RUN[k]!);
      if (total < best && total <= mostCost) {
        costTo[next] = total;
        cameFrom[next] = square;
        open.put(next, total);
      }
    }
  }
  return { costTo, cameFrom, goal: -1 };
}

/** Squares from a start to `goal`. */
export function wayTo(field: CostField, goal: number): number[] {
  const way: number[] = [];
  for (let at = goal; at >= 0; at = field.cameFrom[at]!) way.push(at);
  return way.reverse();
}
