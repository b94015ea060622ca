import { unpackedHeights } from '../scenario/ownHeights';
import type { GroundPlan } from '../scenario/schema';
import { breachDams } from './breach';
import { type Drainage, Drainer, rimOf } from './drainage';
import { digBowls, fillBowls } from './lakes';
import { fractalAlong, noiseField } from './octaves';
import { reliefOf, weatheringOf } from './relief';
import { weather } from './weather';

/** Land while it is being made: heights in double precision, what is sea or lake, and where water runs. */
export type Land = {
  readonly cells: number;
  readonly cellM: number;
  readonly sizeM: number;
  readonly groundM: Float64Array;
  readonly isSea: Uint8Array;
  readonly isLake: Uint8Array;
  readonly drainage: Drainage;
};

type Plan = Pick<GroundPlan, 'sizeM' | 'cellM' | 'relief' | 'own' | 'water'>;
type Coarse = { readonly side: number; readonly stepM: number; readonly marginM: number; readonly heights: Float64Array };

/** Hollows deeper than this on the map's own cells are filled, not drained: a ditch through their dam would be a gorge one cell wide. */
const DEEPEST_BREACH_M = 8;

/** Cells of the map's side. */
export const cellsOf = (plan: Pick<GroundPlan, 'sizeM' | 'cellM'>): number => Math.round(plan.sizeM / plan.cellM);

/** The weathered shape on a coarse grid that reaches past the map, so that no valley ends at the map's edge because the map does. */
function coarseLand(seed: string, plan: Plan): Coarse {
  const inner = Math.min(170, Math.max(100, Math.round(cellsOf(plan) / 2)));
  const stepM = plan.sizeM / inner;
  const margin = Math.round(inner * 0.14) + 3;
  const side = inner + 2 * margin;
  const marginM = margin * stepM;
  const relief = reliefOf(seed, plan);
  const grain = noiseField(seed, 'terrain', 10);
  const heights = new Float64Array(side * side);
  const shapeAt = (eM: number, nM: number): number => {
    const h = relief(eM, nM);
    // A little grain turns parallel rills into branching ones.
    return h <= 0 ? h : h + 0.012 * grain(eM / (3 * stepM), nM / (3 * stepM));
  };
  for (let row = 0; row < side; row++)
    for (let column = 0; column < side; column++)
      heights[row * side + column] = shapeAt((column + 0.5) * stepM - marginM, (row + 0.5) * stepM - marginM);
  weather(heights, side, side, weatheringOf(plan));
  return { side, stepM, marginM, heights };
}

/** Weights of the uniform cubic B-spline for a fraction t between the two middle points: never overshoots. */
function splineWeights(t: number): [number, number, number, number] {
  const s = 1 - t;
  return [(s * s * s) / 6, (3 * t * t * t - 6 * t * t + 4) / 6, (3 * s * s * s - 6 * s * s + 4) / 6, (t * t * t) / 6];
}

/** Coarse heights spread smoothly over the map's own cells: rows first, then columns. */
function spread(coarse: Coarse, cells: number, cellM: number): Float64Array {
  const { side, stepM, marginM, heights } = coarse;
  const from = new Int32Array(cells);
  const weights = new Float64Array(4 * cells);
  for (let i = 0; i < cells; i++) {
    const x = ((i + 0.5) * cellM + marginM) / stepM - 0.5;
    const at = Math.min(side - 3, Math.max(1, Math.floor(x)));
    from[i] = at - 1;
    weights.set(splineWeights(x - at), 4 * i);
  }
  const wide = new Float64Array(side * cells);
  for (let row = 0; row < side; row++) spreadAlong(heights, row * side, from, weights, wide, row * cells);
  const fine = new Float64Array(cells * cells);
  for (let j = 0; j < cells; j++) spreadBetween(wide, from[j]! * cells, weights.subarray(4 * j, 4 * j + 4), fine, j * cells, cells);
  return fine;
}

/** One row of coarse heights, weighed at each fine cell. */
function spreadAlong(
  heights: Float64Array,
  rowAt: number,
  from: Int32Array,
  weights: Float64Array,
  wide: Float64Array,
  wideAt: number,
): void {
  for (let i = 0; i < from.length; i++) {
    const at = rowAt + from[i]!;
    const w = 4 * i;
    wide[wideAt + i] =
      weights[w]! * heights[at]! +
      weights[w + 1]! * heights[at + 1]! +
      weights[w + 2]! * heights[at + 2]! +
      weights[w + 3]! * heights[at + 3]!;
  }
}

/** One fine row: four neighbouring rows of `wide` from index `at`, each with its weight. */
function spreadBetween(wide: Float64Array, at: number, weights: Float64Array, fine: Float64Array, fineAt: number, cells: number): void {
  const [w0, w1, w2, w3] = [weights[0]!, weights[1]!, weights[2]!, weights[3]!];
  for (let i = at; i < at + cells; i++)
    fine[fineAt + i - at] = w0 * wide[i]! + w1 * wide[i + cells]! + w2 * wide[i + 2 * cells]! + w3 * wide[i + 3 * cells]!;
}

/** Knolls and hollows of 60 to 250 m, stronger on steep ground, none at sea. */
function addDetail(seed: string, heights: Float64Array, cells: number, cellM: number, amount: number): void {
  const noise = noiseField(seed, 'terrain', 11);
  const before = heights.slice();
  const dry = new Int32Array(cells);
  const [xs, bumps] = [new Float64Array(cells), new Float64Array(cells)];
  for (let row = 1; row < cells - 1; row++) {
    const count = dryCells(before, row * cells, cells, dry);
    for (let k = 0; k < count; k++) xs[k] = ((dry[k]! - row * cells + 0.5) * cellM) / 240;
    fractalAlong(noise, xs, count, ((row + 0.5) * cellM) / 240, 3, 0.42, bumps);
    addBumps(heights, before, dry, count, bumps, cells, cellM, amount);
  }
}

/** Puts the indices of a row's cells over the sea, its two ends left out, into `dry`. @returns how many */
function dryCells(heights: Float64Array, rowAt: number, cells: number, dry: Int32Array): number {
  let count = 0;
  for (let i = rowAt + 1; i < rowAt + cells - 1; i++) if (heights[i]! > 0) dry[count++] = i;
  return count;
}

function addBumps(
  heights: Float64Array,
  before: Float64Array,
  dry: Int32Array,
  count: number,
  bumps: Float64Array,
  cells: number,
  cellM: number,
  amount: number,
): void {
  for (let k = 0; k < count; k++) {
    const i = dry[k]!;
    const east = (before[i + 1]! - before[i - 1]!) / (2 * cellM);
    const north = (before[i + cells]! - before[i - cells]!) / (2 * cellM);
    const steep = Math.min(1, 500 * Math.sqrt(east * east + north * north));
    const shore = Math.min(1, before[i]! * 25);
    heights[i] = before[i]! + amount * shore * (0.25 + 0.75 * steep) * bumps[k]!;
  }
}

/** Heights stretched so that the land spans exactly the wished relief above its base; sea lies at the base. */
function toMetres(heights: Float64Array, cells: number, { style, strengthM, baseHeightM }: Plan['relief'], isSea: Uint8Array): void {
  const span = { low: Number.POSITIVE_INFINITY, high: Number.NEGATIVE_INFINITY };
  for (let rowAt = 0; rowAt < heights.length; rowAt += cells) widen(span, heights, rowAt, rowAt + cells);
  const low = style === 'coast' ? 0 : span.low;
  const perUnitM = span.high > low ? strengthM / (span.high - low) : 0;
  for (let rowAt = 0; rowAt < heights.length; rowAt += cells) {
    if (style === 'coast') markSea(heights, rowAt, rowAt + cells, isSea);
    stretch(heights, rowAt, rowAt + cells, low, perUnitM, baseHeightM);
  }
}

function widen(span: { low: number; high: number }, heights: Float64Array, at: number, end: number): void {
  let { low, high } = span;
  for (let i = at; i < end; i++) {
    const h = heights[i]!;
    if (h > high) high = h;
    if (h < low) low = h;
  }
  span.low = low;
  span.high = high;
}

function markSea(heights: Float64Array, at: number, end: number, isSea: Uint8Array): void {
  for (let i = at; i < end; i++) if (heights[i]! <= 0) isSea[i] = 1;
}

function stretch(heights: Float64Array, at: number, end: number, low: number, perUnitM: number, baseHeightM: number): void {
  for (let i = at; i < end; i++) heights[i] = baseHeightM + Math.max(0, heights[i]! - low) * perUnitM;
}

/** Heights of an own ground as they are; along a coast what lies at sea level or under it is sea. */
function ownLand(own: NonNullable<Plan['own']>, { relief }: Plan, cells: number, isSea: Uint8Array): Float64Array {
  const heights = unpackedHeights(own, cells);
  if (typeof heights === 'string') throw new RangeError(heights);
  if (relief.style === 'coast') markSea(heights, 0, heights.length, isSea);
  return heights;
}

function drawnLand(seed: string, plan: Plan, cells: number, isSea: Uint8Array): Float64Array {
  const cellM = plan.sizeM / cells;
  const heights = spread(coarseLand(seed, plan), cells, cellM);
  addDetail(seed, heights, cells, cellM, weatheringOf(plan).detail);
  toMetres(heights, cells, plan.relief, isSea);
  return heights;
}

/**
 * Land of the wished style, or of its own heights, with its lakes and without stream beds. Drawn land has no pits, water runs to the edge
 * or the sea; own heights keep their hollows, only the water is led as if they were full.
 */
export function layTerrain(seed: string, plan: Plan): Land {
  const cells = cellsOf(plan);
  const cellM = plan.sizeM / cells;
  const isSea = new Uint8Array(cells * cells);
  const heights = plan.own ? ownLand(plan.own, plan, cells, isSea) : drawnLand(seed, plan, cells, isSea);
  const isOutlet = rimOf(cells, cells);
  if (plan.relief.style === 'coast') for (let i = 0; i < isSea.length; i++) if (isSea[i] === 1) isOutlet[i] = 1;
  const drainer = new Drainer(cells, cells);
  if (!plan.own) breachDams(heights, drainer.fill(heights, isOutlet), isOutlet, cells, DEEPEST_BREACH_M);
  const bowls = digBowls(seed, plan.water.lakes, { heightsM: heights, isSea, cells, cellM });
  const drainage = drainer.drain(heights, isOutlet);
  const isLake = fillBowls(bowls, heights, drainage.filledM, cells);
  const groundM = plan.own ? heights.map((h, i) => (isLake[i] === 1 ? drainage.filledM[i]! : h)) : drainage.filledM;
  return { cells, cellM, sizeM: plan.sizeM, groundM, isSea, isLake, drainage };
}
