import type { NoiseFunction2D } from 'simplex-noise';
import type { GroundPlan } from '../scenario/schema';
import { AlongRow } from './alongRow';
import { blurred } from './blur';
import { CoverClaims } from './claimCover';
import type { Grid } from './grid';
import { fractalAlong, noiseField, smoothStep } from './octaves';
import type { Land } from './terrain';
import { COVER } from './world';

/** What a place is like for plants, per cell. */
type Site = {
  /** Rise over run. */
  readonly slope: Float32Array;
  /** Height over the mean of the land around, -1 in a hollow to 1 on a summit. */
  readonly standing: Float32Array;
  /** Height over the lowest land, as a share of the relief. */
  readonly share: Float32Array;
  /** How much water comes together here, 0..1. */
  readonly gather: Float32Array;
};

function siteOf(land: Land): Site {
  const { groundM, cells, cellM } = land;
  const count = groundM.length;
  const slope = new Float32Array(count);
  const share = new Float32Array(count);
  const gather = new Float32Array(count);
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const h of groundM) {
    if (h < low) low = h;
    if (h > high) high = h;
  }
  const spanM = high > low ? high - low : 1;
  const gatherOf = gatherTable(cellM);
  for (let row = 0; row < cells; row++) siteRow(land, row, low, spanM, gatherOf, { slope, share, gather });
  const mean = blurred(groundM, cells, cells, Math.max(2, Math.round(260 / cellM)));
  const standing = new Float32Array(count);
  const perM = 1 / Math.max(1, 0.16 * spanM);
  for (let i = 0; i < count; i++) standing[i] = Math.min(1, Math.max(-1, (groundM[i]! - mean[i]!) * perM));
  return { slope: blurred(slope, cells, cells, Math.max(1, Math.round(12 / cellM))), standing, share, gather };
}

/** How much water comes together, 0..1, where so many cells drain: the fourth root of the land drained; 1 from 40 ha on. */
const gatherTable = (cellM: number): Float32Array =>
  Float32Array.from({ length: Math.ceil(400_000 / (cellM * cellM)) + 1 }, (_, cells) =>
    Math.min(1, Math.sqrt(Math.sqrt((cells * cellM * cellM) / 400_000))),
  );

function siteRow(
  { groundM, cells, cellM, drainage }: Land,
  row: number,
  low: number,
  spanM: number,
  gatherOf: Float32Array,
  { slope, share, gather }: Pick<Site, 'slope' | 'share' | 'gather'>,
): void {
  const { area } = drainage;
  const south = row > 0 ? cells : 0;
  const north = row < cells - 1 ? cells : 0;
  const northRunM = ((north + south) / cells) * cellM;
  for (let column = 0; column < cells; column++) {
    const i = row * cells + column;
    const west = column > 0 ? 1 : 0;
    const east = column < cells - 1 ? 1 : 0;
    const eastward = (groundM[i + east]! - groundM[i - west]!) / ((east + west) * cellM);
    const northward = (groundM[i + north]! - groundM[i - south]!) / northRunM;
    slope[i] = Math.sqrt(eastward * eastward + northward * northward);
    share[i] = (groundM[i]! - low) / spanM;
    const cellsAbove = area[i]!;
    gather[i] = cellsAbove < gatherOf.length ? gatherOf[cellsAbove]! : 1;
  }
}

type Scores = { readonly rock: Float32Array; readonly wet: Float32Array; readonly wood: Float32Array; readonly scrub: Float32Array };

/** How well each cover would suit each cell, from the site and two fields of patches. */
function scoresOf(site: Site, broadPatches: AlongRow, finePatches: AlongRow, cells: number): Scores {
  const make = () => new Float32Array(cells * cells);
  const scores = { rock: make(), wet: make(), wood: make(), scrub: make() };
  for (let row = 0; row < cells; row++) scoreRow(site, broadPatches.at(row), finePatches.at(row), scores, row * cells);
  return scores;
}

/** Numbers chosen by eye on maps. */
function scoreRow(
  { slope, standing, share, gather }: Site,
  broadRow: Float64Array,
  fineRow: Float64Array,
  { rock, wet, wood, scrub }: Scores,
  rowAt: number,
): void {
  for (let column = 0; column < broadRow.length; column++) {
    const i = rowAt + column;
    const broad = broadRow[column]!;
    const fine = fineRow[column]!;
    const steep = slope[i]!;
    const high = standing[i]!;
    rock[i] = steep + 0.12 * Math.max(0, high) + 0.09 * fine;
    wet[i] = 0.9 * gather[i]! - 0.7 * smoothStep(0.01, 0.12, steep) - 0.25 * high + 0.28 * broad + 0.2 * fine;
    const valleySide = smoothStep(0.03, 0.16, steep) * (1 - 0.6 * smoothStep(0.45, 0.8, steep));
    wood[i] = broad + 0.3 * fine + 0.42 * valleySide - 0.5 * smoothStep(0, 0.7, high) - 0.55 * smoothStep(0.55, 1, share[i]!);
    scrub[i] = wood[i]! - 0.35 * fine + 0.3 * smoothStep(0.25, 0.7, share[i]!);
  }
}

/**
 * What grows and stands on the land: water where lakes and sea are, rock on the steepest ground, wet ground in the flats
 * where water gathers, woods along slopes and valley sides, scrub around and above them. Shares as the plan wishes them.
 */
export function coverLand(seed: string, plan: Pick<GroundPlan, 'cover'>, land: Land): Uint8Array {
  const { cells, cellM, isLake, isSea } = land;
  const cover = new Uint8Array(cells * cells);
  for (let row = 0; row < cells; row++) floodRow(cover, isLake, isSea, row * cells, cells);
  const broadPatches = patches(noiseField(seed, 'cover', 0), land.sizeM, { wideM: 1_150, octaves: 4, gain: 0.48 });
  const finePatches = patches(noiseField(seed, 'cover', 1), land.sizeM, { wideM: 330, octaves: 3, gain: 0.5 });
  const { rock, wet, wood, scrub } = scoresOf(
    siteOf(land),
    new AlongRow(broadPatches, cells, cellM),
    new AlongRow(finePatches, cells, cellM),
    cells,
  );
  const soft = Math.max(1, Math.round(9 / cellM));
  const claims = new CoverClaims(cover);
  const fitted = fittingShares(plan.cover, claims.left / cover.length);
  claims.claim(blurred(rock, cells, cells, soft), COVER.rock, fitted.rock);
  claims.claim(blurred(blurred(wet, cells, cells, 2 * soft), cells, cells, soft), COVER.wet, fitted.wet);
  claims.claim(blurred(wood, cells, cells, soft), COVER.wood, fitted.wood);
  claims.claim(blurred(scrub, cells, cells, soft), COVER.scrub, fitted.scrub);
  return cover;
}

function floodRow(cover: Uint8Array, isLake: Uint8Array, isSea: Uint8Array, rowAt: number, cells: number): void {
  for (let i = rowAt; i < rowAt + cells; i++) if (isLake[i] === 1 || isSea[i] === 1) cover[i] = COVER.water;
}

type Patches = { readonly wideM: number; readonly octaves: number; readonly gain: number };

/** A field of patches no finer than 80 m, taken every 24 m: noise is the dearest part of cover. */
function patches(noise: NoiseFunction2D, sizeM: number, { wideM, octaves, gain }: Patches): Grid<Float32Array> {
  const columns = Math.ceil(sizeM / 24);
  const cellM = sizeM / columns;
  const values = new Float32Array(columns * columns);
  const [xs, along] = [Float64Array.from({ length: columns }, (_, i) => ((i + 0.5) * cellM) / wideM), new Float64Array(columns)];
  for (let row = 0; row < columns; row++) {
    fractalAlong(noise, xs, columns, ((row + 0.5) * cellM) / wideM, octaves, gain, along);
    values.set(along, row * columns);
  }
  return { columns, rows: columns, cellM, values };
}

/** The wished shares, shrunk together if they ask for more land than there is. @param dry free share of the map */
function fittingShares(wished: GroundPlan['cover'], dry: number): GroundPlan['cover'] {
  const asked = wished.wood + wished.scrub + wished.wet + wished.rock;
  const shrink = asked > 0 ? Math.min(1, dry / asked) : 1;
  return { wood: wished.wood * shrink, scrub: wished.scrub * shrink, wet: wished.wet * shrink, rock: wished.rock * shrink };
}
