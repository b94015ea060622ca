/** Ways over a square grid of squares, cheapest first: Dijkstra with a binary heap. Costs are seconds, metres or any other positive number. */
export type CostGrid = {
  readonly side: number;
  /** Cost of going from the centre of square `from` to that of a neighbour; Infinity where there is no way. `run` is 1, sqrt 2 or sqrt 5 squares. */
  readonly cost: (from: number, to: number, run: number) => number;
};

/** Sixteen neighbours: straight, diagonal and knight's moves, so that a way may bend gently. Steps in column and row, length in squares. */
const MOVE_COLUMN = [1, 0, -1, 0, 1, -1, -1, 1, 2, 1, -1, -2, -2, -1, 1, 2] as const;
const MOVE_ROW = [0, 1, 0, -1, 1, 1, -1, -1, 1, 2, 2, 1, -1, -2, -2, -1] as const;
const MOVE_RUN = MOVE_COLUMN.map((column, i) => Math.sqrt(column * column + MOVE_ROW[i]! * MOVE_ROW[i]!));

/** A binary heap of squares by cost; equal costs leave by square number, so the order never depends on the engine. */
class CheapestFirst {
  private readonly squares: number[] = [];
  private readonly costs: number[] = [];

  get isEmpty(): boolean {
    return this.squares.length === 0;
  }

  push(square: number, cost: number): void {
    let at = this.squares.length;
    this.squares.push(square);
    this.costs.push(cost);
    while (at > 0) {
      const up = (at - 1) >> 1;
      if (!this.isBefore(square, cost, up)) break;
      this.squares[at] = this.squares[up]!;
      this.costs[at] = this.costs[up]!;
      at = up;
    }
    this.squares[at] = square;
    this.costs[at] = cost;
  }

  pop(): { readonly square: number; readonly cost: number } {
    const top = { square: this.squares[0]!, cost: this.costs[0]! };
    const square = this.squares.pop()!;
    const cost = this.costs.pop()!;
    const size = this.squares.length;
    let at = 0;
    while (2 * at + 1 < size) {
      let child = 2 * at + 1;
      if (child + 1 < size && this.isBefore(this.squares[child + 1]!, this.costs[child + 1]!, child)) child++;
      if (!this.isBefore(this.squares[child]!, this.costs[child]!, -1, square, cost)) break;
      this.squares[at] = this.squares[child]!;
      this.costs[at] = this.costs[child]!;
      at = child;
    }
    if (size > 0) {
      this.squares[at] = square;
      this.costs[at] = cost;
    }
    return top;
  }

  private isBefore(
    square: number,
    cost: number,
    other: number,
    otherSquare = this.squares[other]!,
    otherCost = this.costs[other]!,
  ): boolean {
    return cost < otherCost || (cost === otherCost && square < otherSquare);
  }
}

export type CostField = { readonly costTo: Float64Array; readonly cameFrom: Int32Array };

/** Least cost from the starts to every square until `isGoal` is met or the cost passes `mostCost`; Infinity where not reached. */
export function spreadCost(
  grid: CostGrid,
  starts: readonly number[],
  mostCost = Number.POSITIVE_INFINITY,
  isGoal: (square: number) => boolean = () => false,
): CostField & { readonly goal: number } {
  const { side, cost } = grid;
  const costTo = new Float64Array(side * side).fill(Number.POSITIVE_INFINITY);
  const cameFrom = new Int32Array(side * side).fill(-1);
  const open = new CheapestFirst();
  for (const start of starts) {
    costTo[start] = 0;
    open.push(start, 0);
  }
  while (!open.isEmpty) {
    const { square, cost: soFar } = open.pop();
    if (soFar > costTo[square]!) continue;
    if (isGoal(square)) return { costTo, cameFrom, goal: square };
    const column = square % side;
    const row = (square - column) / side;
    for (let k = 0; k < 16; k++) {
      const c = column + MOVE_COLUMN[k]!;
      const r = row + MOVE_ROW[k]!;
      if (c < 0 || r < 0 || c >= side || r >= side) continue;
      const next = r * side + c;
      const total = soFar + cost(square, next, MOVE_RUN[k]!);
      if (total < costTo[next]! && total <= mostCost) {
        costTo[next] = total;
        cameFrom[next] = square;
        open.push(next, total);
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
