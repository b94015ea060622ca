import { randomFor } from '../random/draw';
import type { MapPoint } from '../units/frames';
import { lengthM, type UnitVector } from './directions';
import { type Grid, valueAt } from './grid';
import { noiseField } from './octaves';
import { between, gapM } from './polyline';
import type { Stead } from './steads';
import { COVER, type FieldWall } from './world';

type Ground = {
  readonly groundM: Grid<Float32Array>;
  readonly cover: Grid<Uint8Array>;
  readonly trackMask: Grid<Uint8Array>;
  readonly sizeM: number;
};
type Corner = { readonly eM: number; readonly nM: number };

/** Fields lie within this distance of the farm they belong to. */
const REACH_M = 620;
const FIELDS_ACROSS = 13;

/** Uphill at a place, over 120 m; east on flat ground. */
function uphill(ground: Ground, at: MapPoint): UnitVector {
  const east = valueAt(ground.groundM, at.eM + 60, at.nM) - valueAt(ground.groundM, at.eM - 60, at.nM);
  const north = valueAt(ground.groundM, at.eM, at.nM + 60) - valueAt(ground.groundM, at.eM, at.nM - 60);
  const run = lengthM(east, north);
  return run > 0.3 ? { east: east / run, north: north / run } : { east: 1, north: 0 };
}

function coverOf(ground: Ground, p: MapPoint): number {
  const { cover, sizeM } = ground;
  if (p.eM < 0 || p.nM < 0 || p.eM >= sizeM || p.nM >= sizeM) return COVER.water;
  return cover.values[Math.floor(p.nM / cover.cellM) * cover.columns + Math.floor(p.eM / cover.cellM)]!;
}

/** True where the land can be a field: within reach of the farm, gentle, open. */
function isField(ground: Ground, farm: MapPoint, corners: readonly Corner[], reachM: number): boolean {
  const centre = { eM: corners.reduce((s, p) => s + p.eM, 0) / 4, nM: corners.reduce((s, p) => s + p.nM, 0) / 4 };
  if (gapM(centre, farm) > reachM) return false;
  const heights = corners.map((p) => valueAt(ground.groundM, p.eM, p.nM));
  const steep = (Math.max(...heights) - Math.min(...heights)) / gapM(corners[0]!, corners[2]!);
  const aboveM = valueAt(ground.groundM, centre.eM, centre.nM) - valueAt(ground.groundM, farm.eM, farm.nM);
  const kinds = [centre, ...corners.map((p) => between(centre, p, 0.6))].map((p) => coverOf(ground, p));
  const open = kinds.filter((kind) => kind === COVER.open || kind === COVER.built).length;
  return steep < 0.24 && aboveM < 70 && open >= 4;
}

/** A wall between two corners, cut where a way, wood or water lies; no stretch under 12 m. */
function wallPieces(ground: Ground, a: Corner, b: Corner): FieldWall[] {
  const steps = Math.max(2, Math.ceil(gapM(a, b) / 6));
  const pieces: FieldWall[] = [];
  let points: MapPoint[] = [];
  const close = (): void => {
    const [first, last] = [points[0], points[points.length - 1]];
    if (first && last && gapM(first, last) > 12) pieces.push({ points: points.filter((_, i) => i % 3 === 0 || i === points.length - 1) });
    points = [];
  };
  for (let i = 0; i <= steps; i++) {
    const p = between(a, b, i / steps);
    const kind = coverOf(ground, p);
    const { trackMask } = ground;
    const onWay =
      kind !== COVER.water &&
      trackMask.values[Math.floor(p.nM / trackMask.cellM) * trackMask.columns + Math.floor(p.eM / trackMask.cellM)] === 1;
    if (onWay || kind === COVER.water || kind === COVER.wood || kind === COVER.built) close();
    else points.push(p);
  }
  close();
  return pieces;
}

/** True where a corner belongs to this farm and no other, a lane's width left between. */
const isNearest = (p: Corner, own: Stead, all: readonly Stead[]): boolean =>
  all.every((other) => other === own || gapM(p, own.at) + 12 < gapM(p, other.at));

/**
 * Dry stone walls round the fields of each farm: a shaken lattice laid up and across the slope,
 * of which the gentle, open, near quads are fields. A wall stands where at least one side is a field.
 */
export function buildFieldWalls(seed: string, ground: Ground, steads: readonly Stead[]): FieldWall[] {
  const walls: FieldWall[] = [];
  for (const [index, stead] of steads.entries()) {
    const random = randomFor(seed, 'walls', index);
    const ragged = noiseField(seed, 'walls', 100 + index);
    const up = uphill(ground, stead.at);
    const [deepM, wideM] = [95 + 50 * random(), 70 + 35 * random()];
    const half = (FIELDS_ACROSS + 1) / 2;
    const corner = (i: number, j: number): Corner => {
      const u = (i - half + 0.3 * (random() - 0.5)) * deepM;
      // Rows are set off against each other like bricks, as fields taken in one after another are.
      const v = (j - half + 0.34 * (random() - 0.5) + (i % 2 === 0 ? 0 : 0.42)) * wideM;
      return { eM: stead.at.eM + u * up.east + v * up.north, nM: stead.at.nM + u * up.north - v * up.east };
    };
    const lattice = Array.from({ length: FIELDS_ACROSS + 1 }, (_, i) => Array.from({ length: FIELDS_ACROSS + 1 }, (__, j) => corner(i, j)));
    const at = (i: number, j: number): Corner => lattice[i]![j]!;
    const fieldAt = (i: number, j: number): boolean => {
      const quad = [at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)];
      const reachM = REACH_M * (0.62 + 0.38 * ragged(i / 3, j / 3));
      return isField(ground, stead.at, quad, reachM) && quad.every((p) => isNearest(p, stead, steads));
    };
    const fields = Array.from({ length: FIELDS_ACROSS }, (_, i) => Array.from({ length: FIELDS_ACROSS }, (__, j) => fieldAt(i, j)));
    const field = (i: number, j: number): boolean => fields[i]?.[j] ?? false;
    for (let i = 0; i <= FIELDS_ACROSS; i++)
      for (let j = 0; j <= FIELDS_ACROSS; j++) {
        if (j < FIELDS_ACROSS && (field(i, j) || field(i - 1, j))) walls.push(...wallPieces(ground, at(i, j), at(i, j + 1)));
        if (i < FIELDS_ACROSS && (field(i, j) || field(i, j - 1)) && random() > 0.12)
          walls.push(...wallPieces(ground, at(i, j), at(i + 1, j)));
      }
  }
  return walls;
}
