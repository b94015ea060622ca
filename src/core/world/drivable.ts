import type { MapPoint } from '../units/frames';
import { gapM, stepped } from './polyline';
import type { Track, World } from './world';

/** What a vehicle drives on; where there is none of it, paths count. */
export function drivenOn(world: Pick<World, 'tracks'>): (track: Track) => boolean {
  const roads = world.tracks.some(({ kind }) => kind !== 'path');
  return ({ kind }) => !roads || kind !== 'path';
}

/** Roads and tracks as points 10 m apart, each with those it leads to. */
export type DriveNet = {
  readonly places: readonly MapPoint[];
  readonly kinds: readonly Track['kind'][];
  readonly next: readonly (readonly number[])[];
  /** Numbers of the points within `withinM` of a place, at most `LINK_M` or `FROM_M`. */
  readonly near: (at: MapPoint, withinM: number) => readonly number[];
};

const EVERY_M = 10;
/** Ways that come so near to one another meet there: their lines are drawn softened. */
const LINK_M = 15;
const SQUARE_M = 20;

const kept = new WeakMap<World, DriveNet>();

export function driveNet(world: World): DriveNet {
  const known = kept.get(world) ?? netOf(world);
  kept.set(world, known);
  return known;
}

function netOf(world: World): DriveNet {
  const ways = world.tracks.filter(drivenOn(world)).map(({ kind, points }) => ({ kind, points: stepped(points, EVERY_M) }));
  const places = ways.flatMap(({ points }) => points);
  const kinds = ways.flatMap(({ kind, points }) => points.map(() => kind));
  const wayOf = ways.flatMap(({ points }, way) => points.map(() => way));
  const squares = new Map<string, number[]>();
  const squareKey = (column: number, row: number) => `${column}/${row}`;
  const columnOf = (m: number) => Math.floor(m / SQUARE_M);
  places.forEach(({ eM, nM }, i) => {
    const key = squareKey(columnOf(eM), columnOf(nM));
    squares.set(key, [...(squares.get(key) ?? []), i]);
  });
  const near = (at: MapPoint, withinM: number): readonly number[] => {
    const reach = Math.ceil(withinM / SQUARE_M);
    const found: number[] = [];
    for (let column = columnOf(at.eM) - reach; column <= columnOf(at.eM) + reach; column++)
      for (let row = columnOf(at.nM) - reach; row <= columnOf(at.nM) + reach; row++)
        for (const i of squares.get(squareKey(column, row)) ?? []) if (gapM(places[i]!, at) <= withinM) found.push(i);
    return found;
  };
  const next = places.map((place, i) => {
    const along = [i - 1, i + 1].filter((k) => wayOf[k] === wayOf[i]);
    return [...along, ...near(place, LINK_M).filter((k) => wayOf[k] !== wayOf[i])];
  });
  return { places, kinds, next, near };
}

/** Metres from every point of the net to a goal, by the net; infinite where no way leads. */
export function metresTo({ places, next }: DriveNet, goal: number): Float64Array {
  const metres = new Float64Array(places.length).fill(Number.POSITIVE_INFINITY);
  metres[goal] = 0;
  // Points lie about as far from one another everywhere: a queue that looks again where a shorter way comes later is soon done.
  const queue = [goal];
  for (let head = 0; head < queue.length; head++) {
    const here = queue[head]!;
    for (const neighbour of next[here]!) {
      const m = metres[here]! + gapM(places[here]!, places[neighbour]!);
      if (m >= metres[neighbour]! - 1e-9) continue;
      metres[neighbour] = m;
      queue.push(neighbour);
    }
  }
  return metres;
}

/** The point of the net nearest to a place, or -1 where the world has none. */
export function nearestOnNet({ places }: DriveNet, at: MapPoint): number {
  let best = -1;
  places.forEach((place, i) => {
    if (best < 0 || gapM(place, at) < gapM(places[best]!, at)) best = i;
  });
  return best;
}
