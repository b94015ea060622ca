import { contradicts } from '../fix/support';
import { type Outlook, outlookOf } from '../technique/outlook';
import { turnDeg } from '../units/angles';
import { bearingDeg, distanceM, type MapPoint, stepAlong } from '../units/frames';
import { groundHeightM } from '../world/height';
import { opennessAt } from '../world/openness';
import { coverAt } from '../world/profile';
import { walkable } from '../world/walking';
import { COVER, type World } from '../world/world';
import type { Decisions, Hunt } from './hunt';
import { straightShare, straightWayOpen } from './wayThere';

type Wish = {
  readonly alongDeg: number;
  readonly stepM: number;
  /** How far to either side of the direction a place may lie, degrees. */
  readonly spreadDeg: number;
  readonly reads: Decisions['reads'];
};

const SHARES = [0.6, 0.75, 0.9, 1, 1.1];
const BY_DEG = 10;
/** A wood is worth this much less: the beep comes and goes within two steps there. */
const WOOD_COST = 0.1;
const OFF_COST_PER_DEG = 1 / 1_000;
/** A way that takes twice as long as over level grass. */
const SLOW_COST = 0.1;

/** The best place to read from next, about a step along a direction, by what the map shows; `null` where no way is open. */
export function nextPlace(map: World, from: MapPoint, wish: Wish): MapPoint | null {
  let best: { readonly at: MapPoint; readonly score: number } | null = null;
  for (let offDeg = -wish.spreadDeg; offDeg <= wish.spreadDeg; offDeg += BY_DEG) {
    for (const share of SHARES) {
      const at = stepAlong(from, wish.alongDeg + offDeg, wish.stepM * share);
      const slowness = insideMap(map, at) ? straightShare(map, from, at) : null;
      if (slowness === null) continue;
      const cost = woodCost(map, at) + Math.abs(offDeg) * OFF_COST_PER_DEG + (slowness - 1) * SLOW_COST;
      const score = liking(wish.reads, opennessAt(map, at)) - cost;
      if (!best || score > best.score) best = { at, score };
    }
  }
  return best?.at ?? null;
}

/** Where no straight way leads on: the walkable place nearest to a step along the direction, to be reached by a way round. */
export function placeBeyond(map: World, from: MapPoint, alongDeg: number, stepM: number): MapPoint | null {
  for (const share of [1, 1.3, 1.6, 2, 0.7]) {
    for (const offDeg of [0, 15, -15, 30, -30, 45, -45]) {
      const at = stepAlong(from, alongDeg + offDeg, stepM * share);
      if (insideMap(map, at) && walkable(map, at)) return at;
    }
  }
  return null;
}

const liking = (reads: Decisions['reads'], openness: number): number => (reads === 'open' ? openness : -openness);

const woodCost = (map: World, at: MapPoint): number => (coverAt(map, at.eM, at.nM) === COVER.wood ? WOOD_COST : 0);

const insideMap = ({ sizeM }: World, { eM, nM }: MapPoint): boolean => eM > 20 && nM > 20 && eM < sizeM - 20 && nM < sizeM - 20;

/** So much clearer, in percentiles among the places near, and a contradiction or a lost signal is answered. */
const CLEARER_PERCENTILES = 25;
const HIGHER_M = 12;
const AHEAD_DEG = 40;
const ANSWER_WITHIN_S = 150;

/** Did the last reading contradict the one before it? */
export function setBack({ readings }: Hunt): boolean {
  const [before, last] = [readings.at(-2), readings.at(-1)];
  return before !== undefined && last !== undefined && contradicts(last, [before]);
}

/** The place near by that is clearer, or higher, and leads least astray from a direction; `null` where none is. */
export function clearerPlace(map: World, from: MapPoint, alongDeg: number, paceMPerS: number): MapPoint | null {
  const outlook = outlookOf(map);
  const reachM = 0.6 * ANSWER_WITHIN_S * paceMPerS;
  // Height alone excuses no walk away from the sound.
  const isAhead = (at: MapPoint) => isHigher(map, from, at) && Math.abs(turnDeg(alongDeg, bearingDeg(from, at))) <= AHEAD_DEG;
  const places = outlook.reachable(from, ANSWER_WITHIN_S).filter((at) => {
    const m = distanceM(from, at);
    return m > 45 && m < reachM && (seesFarther(outlook, from, at) || isAhead(at)) && straightWayOpen(map, from, at);
  });
  const cost = (at: MapPoint) => distanceM(from, at) + Math.abs(turnDeg(alongDeg, bearingDeg(from, at)));
  return places.length === 0 ? null : places.reduce((a, b) => (cost(b) < cost(a) ? b : a));
}

const isHigher = (map: World, from: MapPoint, at: MapPoint): boolean => groundHeightM(map, at) - groundHeightM(map, from) >= HIGHER_M;

const seesFarther = (outlook: Outlook, from: MapPoint, at: MapPoint): boolean =>
  outlook.percentileAmong(at, from) - outlook.percentileAmong(from, from) >= CLEARER_PERCENTILES;

/** Where nothing is heard: the best liked place within some minutes that is not near one tried before. */
export function untriedPlace(hunt: Hunt, tried: readonly MapPoint[]): MapPoint | null {
  const { map, at: from } = hunt.view.seen;
  for (const [seconds, apartM] of [
    [240, 150],
    [500, 120],
  ] as const) {
    const places = outlookOf(map)
      .reachable(from, seconds)
      .filter((at) => distanceM(at, from) > apartM / 2 && tried.every((before) => distanceM(before, at) > apartM));
    const score = (at: MapPoint) => liking(hunt.decisions.reads, opennessAt(map, at) + groundHeightM(map, at) / 400) - woodCost(map, at);
    if (places.length > 0) return places.reduce((a, b) => (score(b) > score(a) ? b : a));
  }
  return null;
}
