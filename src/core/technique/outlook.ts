import type { MapPoint } from '../units/frames';
import { opennessAt, percentileOf } from '../world/openness';
import { reachableWithin } from '../world/reachable';
import type { World } from '../world/world';

/** How well a place sees, against the places that could have been walked to instead. Known from the ground alone. */
export type Outlook = {
  /** Percentile, 0 to 100, of the openness of `at` among the places within two minutes' walk of `from`. */
  readonly percentileAmong: (at: MapPoint, from: MapPoint) => number;
  /** Openness at the 75th less that at the 25th percentile of the places within two minutes' walk. */
  readonly contrastAround: (from: MapPoint) => number;
  /** Places that a walker could reach in a time, thinned to one per 40 m square. */
  readonly reachable: (from: MapPoint, seconds: number) => readonly MapPoint[];
};

/** The places compared with are those within two minutes' walk. */
const WALK_S = 120;
/** Views change slowly over the ground; one place per square of this side stands for it, so that a long run is judged at once. */
const THINNED_M = 40;
/** Places are rounded to this, so that what was looked at for one reading is used again. */
const ROUNDED_M = 1;

const kept = new WeakMap<World, Outlook>();

/** The outlook of a world; computed once per place and world, whoever asks. */
export function outlookOf(world: World): Outlook {
  const known = kept.get(world);
  if (known) return known;
  const made = makeOutlook(
    (at) => opennessAt(world, at),
    (from, seconds) => reachableWithin(world, from, seconds),
  );
  kept.set(world, made);
  return made;
}

/** An outlook from its two sources. */
export function makeOutlook(
  openness: (at: MapPoint) => number,
  reachableFrom: (from: MapPoint, seconds: number) => readonly MapPoint[],
): Outlook {
  const opennessOf = remembered(openness);
  const within = (seconds: number) => remembered((from) => thinned(reachableFrom(from, seconds)));
  const bySeconds = new Map<number, (from: MapPoint) => readonly MapPoint[]>();
  const reachable = (from: MapPoint, seconds: number) => {
    const places = bySeconds.get(seconds) ?? within(seconds);
    bySeconds.set(seconds, places);
    return places(from);
  };
  const views = remembered((from) => Float64Array.from(reachable(from, WALK_S), opennessOf).sort());
  return {
    reachable,
    percentileAmong: (at, from) => percentileOf(opennessOf(at), views(from)),
    contrastAround: (from) => quantile(views(from), 0.75) - quantile(views(from), 0.25),
  };
}

function remembered<T>(compute: (at: MapPoint) => T): (at: MapPoint) => T {
  const values = new Map<string, T>();
  return (at) => {
    const rounded = { eM: Math.round(at.eM / ROUNDED_M) * ROUNDED_M, nM: Math.round(at.nM / ROUNDED_M) * ROUNDED_M };
    const key = `${rounded.eM}/${rounded.nM}`;
    const value = values.get(key) ?? compute(rounded);
    values.set(key, value);
    return value;
  };
}

/** The first place of each square. */
function thinned(places: readonly MapPoint[]): readonly MapPoint[] {
  const squares = new Map<string, MapPoint>();
  for (const at of places) {
    const square = `${Math.floor(at.eM / THINNED_M)}/${Math.floor(at.nM / THINNED_M)}`;
    if (!squares.has(square)) squares.set(square, at);
  }
  return [...squares.values()];
}

/** The value below which a share of the sorted values lies, linear between neighbours; 0 for none. */
function quantile(sorted: Float64Array, share: number): number {
  const place = share * (sorted.length - 1);
  const low = sorted[Math.floor(place)] ?? 0;
  const high = sorted[Math.ceil(place)] ?? low;
  return low + (high - low) * (place - Math.floor(place));
}
