/** Gives every cell whose middle lies inside an outline (east and north in metres, closed by itself) a number; where it crosses itself, what is inside an odd number of times. */
export function fillOutline(
  outline: readonly (readonly [number, number])[],
  values: Uint8Array,
  cells: number,
  cellM: number,
  number: number,
): void {
  const norths = outline.map(([, nM]) => nM);
  const first = Math.max(0, Math.floor(Math.min(...norths) / cellM - 0.5));
  const last = Math.min(cells - 1, Math.ceil(Math.max(...norths) / cellM - 0.5));
  for (let row = first; row <= last; row++) {
    const crossings = crossingsAt(outline, (row + 0.5) * cellM);
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      const from = Math.max(0, Math.ceil(crossings[k]! / cellM - 0.5));
      const to = Math.min(cells - 1, Math.ceil(crossings[k + 1]! / cellM - 0.5) - 1);
      for (let column = from; column <= to; column++) values[row * cells + column] = number;
    }
  }
}

/** Where the outline crosses a line from west to east, metres east, rising. */
function crossingsAt(outline: readonly (readonly [number, number])[], nM: number): number[] {
  const crossings: number[] = [];
  for (let k = 0; k < outline.length; k++) {
    const [eA, nA] = outline[k]!;
    const [eB, nB] = outline[(k + 1) % outline.length]!;
    if (nA <= nM === nB <= nM) continue;
    crossings.push(eA + ((nM - nA) / (nB - nA)) * (eB - eA));
  }
  return crossings.sort((a, b) => a - b);
}
