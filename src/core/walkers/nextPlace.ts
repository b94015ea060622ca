import { bearingDeg, distanceM, type MapPoint, stepAlong } from '../units/frames';
import { opennessAt } from '../world/openness';
import { coverAt } from '../world/profile';
import { walkable } from '../world/walking';
import { COVER, type World } from '../world/world';

/** Can one go straight from here to there without water or walls in the way? */
export function straightWayOpen(map: World, from: MapPoint, to: MapPoint): boolean {
  const lengthM = distanceM(from, to);
  const alongDeg = bearingDeg(from, to);
  for (let m = 5; m <= lengthM; m += 8) {
    if (!walkable(map, stepAlong(from, alongDeg, m))) return false;
  }
  return true;
}

type Wish = {
  readonly alongDeg: number;
  readonly stepM: number;
  /** How far to either side of the direction a place may lie, degrees. */
  readonly spreadDeg: number;
  readonly score: (openness: number) => number;
};

/** The best place to read from next, about a step along a direction, by what the map shows; `null` where no way is open. */
export function nextPlace(map: World, from: MapPoint, wish: Wish): MapPoint | null {
  let best: { readonly at: MapPoint; readonly score: number } | null = null;
  for (let offDeg = -wish.spreadDeg; offDeg <= wish.spreadDeg; offDeg += 15) {
    for (const share of [0.75, 1, 1.25]) {
      const at = stepAlong(from, wish.alongDeg + offDeg, wish.stepM * share);
      if (!insideMap(map, at) || !straightWayOpen(map, from, at)) continue;
      const inWood = coverAt(map, at.eM, at.nM) === COVER.wood ? 0.1 : 0;
      const score = wish.score(opennessAt(map, at)) - inWood - Math.abs(offDeg) / 1_000;
      if (!best || score > best.score) best = { at, score };
    }
  }
  return best?.at ?? null;
}

const insideMap = ({ sizeM }: World, { eM, nM }: MapPoint): boolean => eM > 20 && nM > 20 && eM < sizeM - 20 && nM < sizeM - 20;
