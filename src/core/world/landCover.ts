import type { GroundPlan } from '../scenario/schema';
import { AlongRow } from './alongRow';
import { blurred } from './blur';
import type { Grid } from './grid';
import { fractal, noiseField, smoothStep } from './octaves';
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
  const { groundM, cells, cellM, drainage } = land;
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
  for (let row = 0, i = 0; row < cells; row++) {
    const south = row > 0 ? cells : 0;
    const north = row < cells - 1 ? cells : 0;
    const northRunM = ((north + south) / cells) * cellM;
    for (let column = 0; column < cells; column++, i++) {
      const west = column > 0 ? 1 : 0;
      const east = column < cells - 1 ? 1 : 0;
      const eastward = (groundM[i + east]! - groundM[i - west]!) / ((east + west) * cellM);
      const northward = (groundM[i + north]! - groundM[i - south]!) / northRunM;
      slope[i] = Math.sqrt(eastward * eastward + northward * northward);
      share[i] = (groundM[i]! - low) / spanM;
      gather[i] = Math.min(1, Math.sqrt(Math.sqrt((drainage.area[i]! * cellM * cellM) / 400_000)));
    }
  }
  const mean = blurred(groundM, cells, cells, Math.max(2, Math.round(260 / cellM)));
  const standing = new Float32Array(count);
  const perM = 1 / Math.max(1, 0.16 * spanM);
  for (let i = 0; i < count; i++) standing[i] = Math.min(1, Math.max(-1, (groundM[i]! - mean[i]!) * perM));
  return { slope: blurred(slope, cells, cells, Math.max(1, Math.round(12 / cellM))), standing, share, gather };
}

/** Scores are told apart this finely. */
const CLASSES = 8_192;

/** Gives a cover to the free cells with the highest scores until it has its share of the map. */
function claim(cover: Uint8Array, scores: Float32Array, kind: number, share: number): void {
  const wished = Math.round(share * cover.length);
  if (wished === 0) return;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < cover.length; i++) {
    if (cover[i] !== COVER.open) continue;
    const score = scores[i]!;
    if (score < low) low = score;
    if (score > high) high = score;
  }
  const perClass = (CLASSES - 1) / (high > low ? high - low : 1);
  const counts = new Int32Array(CLASSES);
  for (let i = 0; i < cover.length; i++) if (cover[i] === COVER.open) counts[Math.floor((scores[i]! - low) * perClass)]! += 1;
  let from = CLASSES;
  for (let claimed = 0; from > 0 && claimed < wished; ) claimed += counts[--from]!;
  // A whole number of classes: (score - low) * perClass >= from says the same as its floor would.
  for (let i = 0; i < cover.length; i++) if (cover[i] === COVER.open && (scores[i]! - low) * perClass >= from) cover[i] = kind;
}

type Scores = { readonly rock: Float32Array; readonly wet: Float32Array; readonly wood: Float32Array; readonly scrub: Float32Array };

/** How well each cover would suit each cell, from the site and two fields of patches; numbers chosen by eye on maps. */
function scoresOf({ slope, standing, share, gather }: Site, broadPatches: AlongRow, finePatches: AlongRow, cells: number): Scores {
  const [rock, wet, wood, scrub] = [
    new Float32Array(slope.length),
    new Float32Array(slope.length),
    new Float32Array(slope.length),
    new Float32Array(slope.length),
  ];
  for (let row = 0, i = 0; row < cells; row++) {
    const broadRow = broadPatches.at(row);
    const fineRow = finePatches.at(row);
    for (let column = 0; column < cells; column++, i++) {
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
  return { rock, wet, wood, scrub };
}

/**
 * What grows and stands on the land: water where lakes and sea are, rock on the steepest ground, wet ground in the flats
 * where water gathers, woods along slopes and valley sides, scrub around and above them. Shares as the plan wishes them.
 */
export function coverLand(seed: string, plan: Pick<GroundPlan, 'cover'>, land: Land): Uint8Array {
  const { cells, cellM, isSea } = land;
  const cover = new Uint8Array(cells * cells);
  for (let i = 0; i < cover.length; i++) if (land.isLake[i] || isSea[i]) cover[i] = COVER.water;
  const [patches, stands] = [noiseField(seed, 'cover', 0), noiseField(seed, 'cover', 1)];
  const broadPatches = sampled(land.sizeM, (eM, nM) => fractal(patches, eM / 1_150, nM / 1_150, 4, 0.48));
  const finePatches = sampled(land.sizeM, (eM, nM) => fractal(stands, eM / 330, nM / 330, 3, 0.5));
  const { rock, wet, wood, scrub } = scoresOf(
    siteOf(land),
    new AlongRow(broadPatches, cells, cellM),
    new AlongRow(finePatches, cells, cellM),
    cells,
  );
  const soft = Math.max(1, Math.round(9 / cellM));
  const fitted = fittingShares(plan.cover, cover);
  claim(cover, blurred(rock, cells, cells, soft), COVER.rock, fitted.rock);
  claim(cover, blurred(blurred(wet, cells, cells, 2 * soft), cells, cells, soft), COVER.wet, fitted.wet);
  claim(cover, blurred(wood, cells, cells, soft), COVER.wood, fitted.wood);
  claim(cover, blurred(scrub, cells, cells, soft), COVER.scrub, fitted.scrub);
  return cover;
}

/** A field of patches no finer than 80 m, taken every 24 m: noise is the dearest part of cover. */
function sampled(sizeM: number, field: (eM: number, nM: number) => number): Grid<Float32Array> {
  const columns = Math.ceil(sizeM / 24);
  const cellM = sizeM / columns;
  const values = new Float32Array(columns * columns);
  for (let row = 0, i = 0; row < columns; row++)
    for (let column = 0; column < columns; column++, i++) values[i] = field((column + 0.5) * cellM, (row + 0.5) * cellM);
  return { columns, rows: columns, cellM, values };
}

/** The wished shares, shrunk together if they ask for more land than there is. */
function fittingShares(wished: GroundPlan['cover'], cover: Uint8Array): GroundPlan['cover'] {
  let dry = 0;
  for (const kind of cover) if (kind === COVER.open) dry++;
  const asked = wished.wood + wished.scrub + wished.wet + wished.rock;
  const shrink = asked > 0 ? Math.min(1, dry / cover.length / asked) : 1;
  return { wood: wished.wood * shrink, scrub: wished.scrub * shrink, wet: wished.wet * shrink, rock: wished.rock * shrink };
}
