import { randomFor } from '../random/draw';
import type { GroundPlan } from '../scenario/schema';
import type { MapPoint } from '../units/frames';
import { lengthM, type UnitVector, unitAlong } from './directions';
import { type Grid, valueAt } from './grid';
import { gapM, stepped } from './polyline';
import type { Stead } from './steads';
import type { Building, Track } from './world';
import { COVER } from './world';

type Ground = { readonly groundM: Grid<Float32Array>; readonly cover: Grid<Uint8Array>; readonly sizeM: number };
type Shape = { readonly lengthM: number; readonly widthM: number; readonly heightM: number; readonly walls: Building['walls'] };

/** A building on its rectangle: corners clockwise, its floor at the lowest corner, so that no wall hangs in the air. */
function raise(ground: Ground, at: MapPoint, along: UnitVector, shape: Shape): Building {
  const corner = (forward: number, right: number): MapPoint => ({
    eM: at.eM + (forward * shape.lengthM * along.east + right * shape.widthM * along.north) / 2,
    nM: at.nM + (forward * shape.lengthM * along.north - right * shape.widthM * along.east) / 2,
  });
  const corners = [corner(1, -1), corner(1, 1), corner(-1, 1), corner(-1, -1)] as const;
  const groundM = Math.min(...corners.map((p) => valueAt(ground.groundM, p.eM, p.nM)));
  return { corners, groundM, heightM: shape.heightM, walls: shape.walls };
}

const middle = ({ corners: [a, , c] }: Building): MapPoint => ({ eM: (a.eM + c.eM) / 2, nM: (a.nM + c.nM) / 2 });
const reachM = ({ corners: [a, , c] }: Building): number => gapM(a, c) / 2;

function fits(ground: Ground, building: Building, others: readonly Building[]): boolean {
  const { groundM: heights, cover, sizeM } = ground;
  const dry = building.corners.every((p) => {
    const inside = p.eM > 2 && p.nM > 2 && p.eM < sizeM - 2 && p.nM < sizeM - 2;
    const cell = Math.floor(p.nM / cover.cellM) * cover.columns + Math.floor(p.eM / cover.cellM);
    return inside && cover.values[cell] !== COVER.water && valueAt(heights, p.eM, p.nM) - building.groundM < 3.5;
  });
  const centre = middle(building);
  return dry && others.every((other) => gapM(middle(other), centre) > reachM(other) + reachM(building) + 1);
}

/** Direction of the nearest way at a place, and how far it is; north-east where there is none. */
function wayBeside(tracks: readonly Track[], at: MapPoint): { readonly along: UnitVector; readonly nearest: MapPoint | undefined } {
  let nearestM = Number.POSITIVE_INFINITY;
  let nearest: MapPoint | undefined;
  let along: UnitVector = { east: Math.sqrt(0.5), north: Math.sqrt(0.5) };
  for (const { points } of tracks)
    for (let i = 0; i + 1 < points.length; i++) {
      const [a, b] = [points[i]!, points[i + 1]!];
      const awayM = gapM(a, at);
      const runM = gapM(a, b);
      if (awayM >= nearestM || runM < 1e-6) continue;
      nearestM = awayM;
      nearest = a;
      along = { east: (b.eM - a.eM) / runM, north: (b.nM - a.nM) / runM };
    }
  return { along, nearest };
}

/** A house, a barn or two and perhaps a byre round a yard, square to the track that comes in. */
function farmstead(ground: Ground, random: () => number, at: MapPoint, along: UnitVector, others: readonly Building[]): Building[] {
  const across = { east: along.north, north: -along.east };
  const side = random() < 0.5 ? 1 : -1;
  const place = (forwardM: number, asideM: number): MapPoint => ({
    eM: at.eM + forwardM * along.east + side * asideM * across.east,
    nM: at.nM + forwardM * along.north + side * asideM * across.north,
  });
  const yardM = 13 + 4 * random();
  const wished: [MapPoint, UnitVector, Shape][] = [
    [place(0, yardM), along, { lengthM: 13 + 4 * random(), widthM: 7.5 + random(), heightM: 6.5 + random(), walls: 'stone' }],
    [
      place(2, -yardM - 3),
      along,
      { lengthM: 20 + 10 * random(), widthM: 11 + 3 * random(), heightM: 7 + 2 * random(), walls: random() < 0.6 ? 'metal' : 'stone' },
    ],
  ];
  if (random() < 0.7)
    wished.push([
      place(yardM + 13, 3 - 4 * random()),
      across,
      { lengthM: 14 + 6 * random(), widthM: 7 + random(), heightM: 4.5 + random(), walls: 'stone' },
    ]);
  if (random() < 0.45)
    wished.push([place(-yardM - 16, -yardM), across, { lengthM: 18 + 8 * random(), widthM: 12, heightM: 6.5, walls: 'metal' }]);
  const built: Building[] = [];
  for (const [where, facing, shape] of wished) {
    const building = raise(ground, where, facing, shape);
    if (fits(ground, building, [...others, ...built])) built.push(building);
  }
  return built;
}

/** Houses on both sides of the way through, at uneven distances; a barn or hall at one end. */
function hamletHouses(
  ground: Ground,
  random: () => number,
  at: MapPoint,
  tracks: readonly Track[],
  others: readonly Building[],
): Building[] {
  const wished = 6 + Math.floor(5 * random());
  const spots: { readonly p: MapPoint; readonly along: UnitVector }[] = [];
  for (const track of tracks) {
    const line = stepped(track.points, 8);
    for (let i = 0; i + 1 < line.length; i++) {
      const runM = gapM(line[i]!, line[i + 1]!);
      if (runM > 0.5 && gapM(line[i]!, at) < 190)
        spots.push({ p: line[i]!, along: { east: (line[i + 1]!.eM - line[i]!.eM) / runM, north: (line[i + 1]!.nM - line[i]!.nM) / runM } });
    }
  }
  if (spots.length === 0) {
    const along = unitAlong(360 * random());
    for (let d = -120; d <= 120; d += 8) spots.push({ p: { eM: at.eM + d * along.east, nM: at.nM + d * along.north }, along });
  }
  spots.sort((a, b) => gapM(a.p, at) - gapM(b.p, at));
  const built: Building[] = [];
  for (const { p, along } of spots) {
    if (built.length >= wished) break;
    const isHall = built.length === 3;
    const shape: Shape = isHall
      ? { lengthM: 18 + 4 * random(), widthM: 10, heightM: 8.5, walls: 'stone' }
      : { lengthM: 9 + 5 * random(), widthM: 7 + random(), heightM: 5.8 + 1.6 * random(), walls: 'stone' };
    const side = random() < 0.5 ? 1 : -1;
    const backM = 9 + shape.widthM / 2 + 5 * random();
    const where = { eM: p.eM + side * backM * along.north, nM: p.nM - side * backM * along.east };
    const building = raise(ground, where, along, shape);
    if (fits(ground, building, [...others, ...built]) && tracks.every((t) => clearOf(t, building))) built.push(building);
  }
  return built;
}

const clearOf = (track: Track, building: Building): boolean =>
  track.points.every((p) => lengthM(p.eM - middle(building).eM, p.nM - middle(building).nM) > 5.5 + reachM(building) * 0.7);

/** All buildings: those set by hand first and always, then hamlets, then farms. */
export function raiseBuildings(
  seed: string,
  plan: Pick<GroundPlan, 'buildings'>,
  ground: Ground,
  steads: readonly Stead[],
  tracks: readonly Track[],
): Building[] {
  const buildings = plan.buildings.map(({ at: [eM, nM], alongDeg, ...shape }) => raise(ground, { eM, nM }, unitAlong(alongDeg), shape));
  for (const [i, stead] of steads.entries()) {
    const random = randomFor(seed, 'buildings', 100 + i);
    if (stead.kind === 'hamlet') buildings.push(...hamletHouses(ground, random, stead.at, tracks, buildings));
    else buildings.push(...farmstead(ground, random, stead.at, wayBeside(tracks, stead.at).along, buildings));
  }
  return buildings;
}

/** True if the map point lies within the building's walls. */
export function isInside(building: Building, p: MapPoint): boolean {
  const { corners } = building;
  for (let i = 0; i < 4; i++) {
    const [a, b] = [corners[i]!, corners[(i + 1) % 4]!];
    if ((b.eM - a.eM) * (p.nM - a.nM) - (b.nM - a.nM) * (p.eM - a.eM) > 0) return false;
  }
  return true;
}

/** Marks cells under buildings as built: those whose centre lies within, and always the one under the middle. Water stays water. */
export function markBuilt(cover: Grid<Uint8Array>, buildings: readonly Building[]): void {
  const { columns, rows, cellM, values } = cover;
  for (const building of buildings) {
    const at = middle(building);
    const reach = reachM(building);
    const mark = (column: number, row: number): void => {
      if (column < 0 || row < 0 || column >= columns || row >= rows) return;
      if (values[row * columns + column] !== COVER.water) values[row * columns + column] = COVER.built;
    };
    mark(Math.floor(at.eM / cellM), Math.floor(at.nM / cellM));
    for (let row = Math.floor((at.nM - reach) / cellM); row <= (at.nM + reach) / cellM; row++)
      for (let column = Math.floor((at.eM - reach) / cellM); column <= (at.eM + reach) / cellM; column++)
        if (isInside(building, { eM: (column + 0.5) * cellM, nM: (row + 0.5) * cellM })) mark(column, row);
  }
}
