import { randomFor } from '../random/draw';
import type { GroundPlan } from '../scenario/schema';
import type { MapPoint } from '../units/frames';
import { type CostGrid, spreadCost, wayTo } from './leastCost';
import { cornersCut, gapM, softened } from './polyline';
import { type RoadLand, squareAt } from './roadLand';
import type { Track } from './world';

/** Extra cost for each rise over run, squared: a road goes round where a path goes up. */
const SLOPE_TOLL = { road: 900, track: 420, path: 110 } as const;

/** A metre where a way lies already costs this share. */
const SHARED = 0.4;

function costsFor(land: RoadLand, kind: Track['kind']): CostGrid {
  const { side, squareM, heightM, toll, steep, hasWay } = land;
  const slopeToll = SLOPE_TOLL[kind];
  const [acrossToll, atLeast] = [new Float64Array(side * side), new Float64Array(side * side)];
  for (let i = 0; i < acrossToll.length; i++) {
    acrossToll[i] = 0.12 * slopeToll * steep[i]! * steep[i]!;
    // Slopes only make a move dearer; a little less, so that rounding never makes this the larger figure.
    atLeast[i] = (1 - 1e-9) * squareM * toll[i]! * (hasWay[i] === 1 ? SHARED : 1);
  }
  return {
    side,
    cost: (from, to, run) => {
      const rise = (heightM[to]! - heightM[from]!) / (run * squareM);
      const share = hasWay[from] === 1 && hasWay[to] === 1 ? SHARED : 1;
      return run * squareM * toll[to]! * (1 + slopeToll * rise * rise * (1 + 40 * rise * rise) + acrossToll[to]!) * share;
    },
    atLeast,
  };
}

/** Puts a way along squares: marks them, and gives the smooth line through their centres, run out to the map's edge where it ends there. */
function layWay(
  land: RoadLand,
  kind: Track['kind'],
  way: readonly number[],
  ends: { readonly first?: MapPoint; readonly last?: MapPoint },
): Track {
  const { side, squareM } = land;
  const last = side - 1;
  for (const [i, square] of way.entries()) {
    land.hasWay[square] = 1;
    const before = way[i - 1];
    // A knight's move skips a square: mark the one between as well, so that later ways can follow.
    if (before !== undefined) land.hasWay[middleOf(before, square, side)] = 1;
  }
  const centres = way.map((square) => ({ eM: ((square % side) + 0.5) * squareM, nM: (Math.floor(square / side) + 0.5) * squareM }));
  const toEdge = (square: number, p: MapPoint): MapPoint => {
    const column = square % side;
    const row = (square - column) / side;
    if (column === 0 || column === last) return { eM: column === 0 ? 0 : side * squareM, nM: p.nM };
    if (row === 0 || row === last) return { eM: p.eM, nM: row === 0 ? 0 : side * squareM };
    return p;
  };
  const first = ends.first ?? toEdge(way[0]!, centres[0]!);
  const end = ends.last ?? toEdge(way[way.length - 1]!, centres[centres.length - 1]!);
  const line = [first, ...centres.slice(1, -1), end];
  return { kind, points: cornersCut(softened(line, 2), 1) };
}

function middleOf(a: number, b: number, side: number): number {
  const column = Math.floor(((a % side) + (b % side)) / 2);
  return Math.floor((Math.floor(a / side) + Math.floor(b / side)) / 2) * side + column;
}

type HeightSpan = { readonly low: number; readonly high: number };

function heightSpan({ heightM }: RoadLand): HeightSpan {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < heightM.length; i++) {
    low = Math.min(low, heightM[i]!);
    high = Math.max(high, heightM[i]!);
  }
  return { low, high };
}

/** A square on one side of the map (0 south, 1 east, 2 north, 3 west) where a way would leave: low and gentle, some way from the corners. */
function gateOn(land: RoadLand, { low, high }: HeightSpan, edge: number, random: () => number): number {
  const { side } = land;
  let best = -1;
  let bestToll = Number.POSITIVE_INFINITY;
  for (let i = Math.floor(0.1 * side); i < 0.9 * side; i++) {
    const square = [i, i * side + side - 1, (side - 1) * side + i, i * side][edge]!;
    if (land.toll[square] === Number.POSITIVE_INFINITY || land.hasWay[square]) continue;
    const dear = (land.heightM[square]! - low) / (high > low ? high - low : 1) + 2 * land.steep[square]! + 0.6 * random();
    if (dear < bestToll) [best, bestToll] = [square, dear];
  }
  return best;
}

/** Kinds of the ways that cross the map, in the order they are laid. */
const kindOf = (index: number, count: number): Track['kind'] =>
  index === 0 && count > 1 ? 'road' : index < Math.ceil((count + 1) / 2) ? 'track' : 'path';

/** Ways from edge to edge that follow the ground; later ones share what lies already. */
export function layThroughWays(seed: string, plan: Pick<GroundPlan, 'tracks'>, land: RoadLand): Track[] {
  const tracks: Track[] = [];
  const span = heightSpan(land);
  const turn = Math.floor(4 * randomFor(seed, 'tracks', 100)());
  for (let i = 0; i < plan.tracks; i++) {
    const random = randomFor(seed, 'tracks', i);
    const from = gateOn(land, span, (turn + i) % 4, random);
    const to = gateOn(land, span, (turn + i + 2 - (i % 3 === 2 ? 1 : 0)) % 4, random);
    if (from < 0 || to < 0) continue;
    const kind = kindOf(i, plan.tracks);
    const field = spreadCost(costsFor(land, kind), [from], Number.POSITIVE_INFINITY, (square) => square === to);
    if (field.goal >= 0) tracks.push(...freshStretches(land, kind, wayTo(field, to), tracks));
  }
  return tracks;
}

/** Only the stretches where no way lies yet are new; each begins and ends on the way it leaves. */
function freshStretches(land: RoadLand, kind: Track['kind'], way: readonly number[], tracks: readonly Track[]): Track[] {
  const before = land.hasWay.slice();
  const stretches: number[][] = [];
  let stretch: number[] = [];
  for (const [i, square] of way.entries()) {
    const isOld = before[square] === 1;
    if (!isOld && stretch.length === 0 && i > 0) stretch.push(way[i - 1]!);
    if (!isOld || stretch.length > 0) stretch.push(square);
    if (isOld && stretch.length > 0) {
      stretches.push(stretch);
      stretch = [];
    }
  }
  stretches.push(stretch);
  return stretches
    .filter((squares) => squares.length > 3)
    .map((squares) => {
      const [first, last] = [squares[0]!, squares[squares.length - 1]!];
      return layWay(land, kind, squares, {
        ...(before[first] ? { first: joint(land, tracks, first) } : {}),
        ...(before[last] ? { last: joint(land, tracks, last) } : {}),
      });
    });
}

/** The corner of the ways that lies nearest to a square's centre: where a new way joins on. */
function joint(land: RoadLand, tracks: readonly Track[], square: number): MapPoint {
  const centre = { eM: ((square % land.side) + 0.5) * land.squareM, nM: (Math.floor(square / land.side) + 0.5) * land.squareM };
  let nearest = centre;
  let nearestM = Number.POSITIVE_INFINITY;
  for (const { points } of tracks)
    for (const p of points) {
      const awayM = gapM(p, centre);
      if (awayM < nearestM) [nearest, nearestM] = [p, awayM];
    }
  return nearest;
}

/** A track from a farm's yard to the nearest way, or, where there is none, to the nearest edge. Nothing where water lies all round. */
export function layFarmTrack(land: RoadLand, yard: MapPoint, tracks: readonly Track[]): Track | undefined {
  const hasWays = tracks.length > 0;
  const { side } = land;
  const start = squareAt(land, yard);
  const isEdge = (square: number) => square % side === 0 || square % side === side - 1 || square < side || square >= side * (side - 1);
  const field = spreadCost(costsFor(land, 'track'), [start], Number.POSITIVE_INFINITY, (square) =>
    hasWays ? land.hasWay[square] === 1 : isEdge(square),
  );
  if (field.goal < 0 || field.goal === start) return undefined;
  return layWay(land, 'track', wayTo(field, field.goal), { first: yard, ...(hasWays ? { last: joint(land, tracks, field.goal) } : {}) });
}
