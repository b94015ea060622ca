import { LeastFirst } from './leastFirst';

/** Ways over a square grid of squares, cheapest first (Dijkstra 1959). Costs are seconds, metres or any other positive number. */
export type CostGrid = {
  readonly side: number;
  /** Cost of going from the centre of square `from` to that of a neighbour; Infinity where there is no way. `run` is 1, sqrt 2 or sqrt 5 squares. */
  readonly cost: (from: number, to: number, run: number) => number;
  /** For each square a figure that, times `run`, the cost of going there is never under; saves asking for the cost of moves that cannot be the best. */
  readonly atLeast?: Float64Array;
};

/** Sixteen neighbours: straight, diagonal and knight's moves, so that a way may bend gently. Steps in column and row, length in squares. */
const MOVE_COLUMN = [1, 0, -1, 0, 1, -1, -1, 1, 2, 1, -1, -2, -2, -1, 1, 2] as const;
const MOVE_ROW = [0, 1, 0, -1, 1, 1, -1, -1, 1, 2, 2, 1, -1, -2, -2, -1] as const;
const MOVE_RUN = Float64Array.from(MOVE_COLUMN, (column, i) => Math.sqrt(column * column + MOVE_ROW[i]! * MOVE_ROW[i]!));

export type CostField = { readonly costTo: Float64Array; readonly cameFrom: Int32Array };

/** Least cost from the starts to every square until `isGoal` is met or the cost passes `mostCost`; Infinity where not reached. */
export function spreadCost(
  grid: CostGrid,
  starts: readonly number[],
  mostCost = Number.POSITIVE_INFINITY,
  isGoal: (square: number) => boolean = () => false,
): CostField & { readonly goal: number } {
  const spread = new Spread(grid, mostCost);
  const { costTo, cameFrom, open } = spread;
  for (const start of starts) {
    costTo[start] = 0;
    open.put(start, 0);
  }
  while (!open.isEmpty) {
    const square = open.take();
    if (isGoal(square)) return { costTo, cameFrom, goal: square };
    spread.leave(square);
  }
  return { costTo, cameFrom, goal: -1 };
}

/** One spreading. A way across the map leaves some twenty thousand squares by sixteen moves each, hence the care. */
class Spread {
  readonly costTo: Float64Array;
  readonly cameFrom: Int32Array;
  readonly open: LeastFirst;
  private readonly side: number;
  private readonly cost: CostGrid['cost'];
  private readonly atLeast: Float64Array;
  private readonly moves: Int32Array;

  constructor(
    { side, cost, atLeast }: CostGrid,
    private readonly mostCost: number,
  ) {
    const count = side * side;
    this.side = side;
    this.cost = cost;
    this.atLeast = atLeast ?? new Float64Array(count);
    this.costTo = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
    this.cameFrom = new Int32Array(count).fill(-1);
    this.open = new LeastFirst(count);
    this.moves = Int32Array.from(MOVE_COLUMN, (column, k) => MOVE_ROW[k]! * side + column);
  }

  /** Tries all moves out of a settled square. */
  leave(square: number): void {
    const { side, moves, costTo, atLeast } = this;
    const column = square % side;
    const row = (square - column) / side;
    const soFar = costTo[square]!;
    const isInner = column > 1 && row > 1 && column < side - 2 && row < side - 2;
    for (let k = 0; k < 16; k++) {
      if (!isInner && this.isOff(column + MOVE_COLUMN[k]!, row + MOVE_ROW[k]!)) continue;
      const next = square + moves[k]!;
      // Settled squares cannot get cheaper: half of all moves need no cost, and of the others the most a rough one.
      const best = costTo[next]!;
      const run = MOVE_RUN[k]!;
      if (best <= soFar || soFar + run * atLeast[next]! >= best) continue;
      const total = soFar + this.cost(square, next, run);
      if (total < best && total <= this.mostCost) this.reach(next, square, total);
    }
  }

  private isOff(column: number, row: number): boolean {
    return column < 0 || row < 0 || column >= this.side || row >= this.side;
  }

  private reach(square: number, from: number, cost: number): void {
    this.costTo[square] = cost;
    this.cameFrom[square] = from;
    this.open.put(square, cost);
  }
}

/** Squares from a start to `goal`. */
export function wayTo(field: CostField, goal: number): number[] {
  const way: number[] = [];
  for (let at = goal; at >= 0; at = field.cameFrom[at]!) way.push(at);
  return way.reverse();
}
