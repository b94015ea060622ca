/** Branches of the heap, as a power of two: four keep it shallow, and the children of one item lie side by side in memory. */
const BRANCH_BITS = 2;
const BRANCHES = 1 << BRANCH_BITS;

/**
 * A heap of numbered items by cost (or height), each in it at most once; equal costs leave by number, so the order never depends
 * on the engine. Hot: a way across the map puts in some ten thousand squares and lowers each twice.
 */
export class LeastFirst {
  private readonly items: Int32Array;
  private readonly costs: Float64Array;
  /** One more than where in the heap an item stands; 0 outside. */
  private readonly place: Int32Array;
  private size = 0;

  /** @param count items are numbered 0 to count - 1 */
  constructor(count: number) {
    this.items = new Int32Array(count);
    this.costs = new Float64Array(count);
    this.place = new Int32Array(count);
  }

  get isEmpty(): boolean {
    return this.size === 0;
  }

  /** Cost of the item that leaves next; the heap must not be empty. */
  get leastCost(): number {
    return this.costs[0]!;
  }

  /** Puts an item in, or lowers its cost if it is in already. */
  put(item: number, cost: number): void {
    const { items, costs, place } = this;
    let at = place[item]! - 1;
    if (at < 0) at = this.size++;
    while (at > 0) {
      const up = (at - 1) >> BRANCH_BITS;
      const upItem = items[up]!;
      const upCost = costs[up]!;
      if (upCost < cost || (upCost === cost && upItem < item)) break;
      items[at] = upItem;
      costs[at] = upCost;
      place[upItem] = at + 1;
      at = up;
    }
    items[at] = item;
    costs[at] = cost;
    place[item] = at + 1;
  }

  /** Takes out the cheapest item; the heap must not be empty. */
  take(): number {
    const { items, costs, place } = this;
    const top = items[0]!;
    place[top] = 0;
    const size = --this.size;
    if (size === 0) return top;
    const item = items[size]!;
    const cost = costs[size]!;
    let at = 0;
    for (let child = 1; child < size; child = BRANCHES * at + 1) {
      let least = child;
      let leastCost = costs[child]!;
      const end = Math.min(child + BRANCHES, size);
      for (let other = child + 1; other < end; other++) {
        const otherCost = costs[other]!;
        if (otherCost < leastCost || (otherCost === leastCost && items[other]! < items[least]!)) {
          least = other;
          leastCost = otherCost;
        }
      }
      const leastItem = items[least]!;
      if (cost < leastCost || (cost === leastCost && item < leastItem)) break;
      items[at] = leastItem;
      costs[at] = leastCost;
      place[leastItem] = at + 1;
      at = least;
    }
    items[at] = item;
    costs[at] = cost;
    place[item] = at + 1;
    return top;
  }
}
