import { randomFor } from '../random/draw';
import { blurred } from './blur';
import { lengthM } from './directions';
import { fractal, noiseField, smoothStep } from './octaves';

type Bare = { readonly heightsM: Float64Array; readonly isSea: Uint8Array; readonly cells: number; readonly cellM: number };

const TRIES = 240;
/** A bowl covers about this share of the map. */
const BOWL_SHARE = 0.013;

/** How well a lake would lie here: in a hollow of the wider land, on a gentle floor, away from the rim and the sea. Higher is better. */
function fitness(bare: Bare, mean: Float32Array, cell: number, reach: number): number {
  const { heightsM, isSea, cells, cellM } = bare;
  const column = cell % cells;
  const row = (cell - column) / cells;
  const rim = Math.min(column, row, cells - 1 - column, cells - 1 - row);
  if (rim < 1.25 * reach) return Number.NEGATIVE_INFINITY;
  const around = [cell - reach, cell + reach, cell - reach * cells, cell + reach * cells];
  if (isSea[cell] || around.some((i) => isSea[i])) return Number.NEGATIVE_INFINITY;
  const heights = around.map((i) => heightsM[i]!);
  const sinkM = mean[cell]! - heightsM[cell]!;
  const tiltM = Math.abs(heights[0]! - heights[1]!) + Math.abs(heights[2]! - heights[3]!);
  return (sinkM - 0.8 * tiltM) / (reach * cellM);
}

/**
 * Presses a bowl with an uneven rim into the land for each lake; filling the pits then makes the lake,
 * whose shore is a contour of the land. Changes the heights. @returns the bowls' middle cells
 */
export function digBowls(seed: string, wished: number, bare: Bare): number[] {
  const { heightsM, cells, cellM } = bare;
  const bowls: number[] = [];
  if (wished === 0) return bowls;
  const mean = blurred(heightsM, cells, cells, Math.max(2, Math.round(350 / cellM)));
  for (let lake = 0; lake < wished; lake++) {
    const random = randomFor(seed, 'water', lake);
    const radius = cells * Math.sqrt(BOWL_SHARE / Math.PI) * (0.75 + 0.55 * random());
    let best = -1;
    let bestFitness = Number.NEGATIVE_INFINITY;
    for (let k = 0; k < TRIES; k++) {
      const cell = Math.floor(random() * cells * cells);
      const column = cell % cells;
      const isApart = bowls.every(
        (other) => lengthM((other % cells) - column, Math.floor(other / cells) - Math.floor(cell / cells)) > 3.2 * radius,
      );
      const value = isApart ? fitness(bare, mean, cell, Math.round(radius)) : Number.NEGATIVE_INFINITY;
      if (value > bestFitness) [best, bestFitness] = [cell, value];
    }
    if (best < 0) continue;
    bowls.push(best);
    press(seed, lake, bare, best, radius);
  }
  return bowls;
}

/** One bowl: deep enough to hold water across the tilt of its floor. */
function press(seed: string, lake: number, { heightsM, isSea, cells, cellM }: Bare, middle: number, radius: number): void {
  const uneven = noiseField(seed, 'water', 100 + lake);
  const reach = Math.ceil(1.6 * radius);
  const [middleColumn, middleRow] = [middle % cells, Math.floor(middle / cells)];
  const r = Math.round(0.7 * radius);
  const tiltM = lengthM(heightsM[middle + r]! - heightsM[middle - r]!, heightsM[middle + r * cells]! - heightsM[middle - r * cells]!);
  const depthM = 2.5 + 1.25 * tiltM;
  for (let row = Math.max(1, middleRow - reach); row < Math.min(cells - 1, middleRow + reach); row++)
    for (let column = Math.max(1, middleColumn - reach); column < Math.min(cells - 1, middleColumn + reach); column++) {
      const i = row * cells + column;
      if (isSea[i]) continue;
      const bend = 0.34 * fractal(uneven, (column * cellM) / 260, (row * cellM) / 260, 3, 0.5);
      const out = lengthM(column - middleColumn, row - middleRow) / radius + bend;
      heightsM[i]! -= depthM * (1 - smoothStep(0.35, 1.1, out));
    }
}

/**
 * Water in each bowl: the cells joined to its middle that filling has raised, made level at their lowest.
 * Changes the filled heights. @returns 1 where a lake lies
 */
export function fillBowls(bowls: readonly number[], heightsM: Float64Array, filledM: Float64Array, cells: number): Uint8Array {
  const isLake = new Uint8Array(filledM.length);
  const isUnderWater = (cell: number) => filledM[cell]! - heightsM[cell]! > 0.25;
  for (const middle of bowls) {
    if (isLake[middle] || !isUnderWater(middle)) continue;
    const found = [middle];
    isLake[middle] = 1;
    let levelM = filledM[middle]!;
    for (let at = 0; at < found.length; at++) {
      const cell = found[at]!;
      levelM = Math.min(levelM, filledM[cell]!);
      for (const next of [cell - 1, cell + 1, cell - cells, cell + cells]) {
        if (isLake[next] || !isUnderWater(next)) continue;
        isLake[next] = 1;
        found.push(next);
      }
    }
    for (const cell of found) filledM[cell] = levelM;
  }
  return isLake;
}
