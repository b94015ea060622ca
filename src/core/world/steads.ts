import { randomFor } from '../random/draw';
import type { GroundPlan } from '../scenario/schema';
import type { MapPoint } from '../units/frames';
import { gapM } from './polyline';
import type { RoadLand } from './roadLand';

/** Where a farm or hamlet stands: the middle of its yard or street. */
export type Stead = { readonly kind: 'farm' | 'hamlet'; readonly at: MapPoint };

const TRIES = 260;
const FARM_APART_M = 420;

/** How good a square is to live on: low, gentle, open, near a way but not on it. Higher is better. */
function comfort(land: RoadLand, square: number, lowM: number, spanM: number, wayM: number, kind: Stead['kind']): number {
  const dry = land.toll[square]!;
  if (dry > 2) return Number.NEGATIVE_INFINITY;
  const high = (land.heightM[square]! - lowM) / spanM;
  const far = kind === 'farm' ? Math.abs(wayM - 110) / 260 : wayM / 90;
  return 2 - 1.1 * high - 5 * land.steep[square]! - far - 1.5 * (dry - 1);
}

/** Distance to the nearest square with a way, by two sweeps over the squares, metres. */
function wayDistanceM(land: RoadLand): Float32Array {
  const { side, squareM, hasWay } = land;
  const away = new Float32Array(side * side).fill(1e6);
  const slantM = Math.sqrt(2) * squareM;
  for (let i = 0; i < side * side; i++) if (hasWay[i]) away[i] = 0;
  for (const d of [-1, 1])
    for (let k = 0; k < side * side; k++) {
      const i = d < 0 ? k : side * side - 1 - k;
      const column = i % side;
      let least = away[i]!;
      const [hasBeside, hasOther] = d < 0 ? [column > 0, column < side - 1] : [column < side - 1, column > 0];
      if (hasBeside) least = Math.min(least, away[i + d]! + squareM);
      const over = i + d * side;
      if (over >= 0 && over < side * side) {
        least = Math.min(least, away[over]! + squareM);
        if (hasBeside) least = Math.min(least, away[over + d]! + slantM);
        if (hasOther) least = Math.min(least, away[over - d]! + slantM);
      }
      away[i] = least;
    }
  return away;
}

/** Places for the farms and hamlets of a plan, apart from one another; fewer where the land has no room. */
export function chooseSteads(seed: string, plan: Pick<GroundPlan, 'farms' | 'hamlets' | 'sizeM'>, land: RoadLand): Stead[] {
  const { side, squareM } = land;
  let [lowM, highM] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const h of land.heightM) [lowM, highM] = [Math.min(lowM, h), Math.max(highM, h)];
  const spanM = Math.max(1, highM - lowM);
  const away = wayDistanceM(land);
  const hasWays = land.hasWay.includes(1);
  const steads: Stead[] = [];
  const kinds = [...Array<Stead['kind']>(plan.hamlets).fill('hamlet'), ...Array<Stead['kind']>(plan.farms).fill('farm')];
  const apartM = Math.min(FARM_APART_M, plan.sizeM / 5);
  for (const [i, kind] of kinds.entries()) {
    const random = randomFor(seed, 'buildings', i);
    let best: MapPoint | undefined;
    let bestComfort = Number.NEGATIVE_INFINITY;
    for (let k = 0; k < TRIES; k++) {
      const at = { eM: plan.sizeM * (0.06 + 0.88 * random()), nM: plan.sizeM * (0.06 + 0.88 * random()) };
      if (steads.some((other) => gapM(other.at, at) < apartM)) continue;
      const square = Math.min(side - 1, Math.floor(at.nM / squareM)) * side + Math.min(side - 1, Math.floor(at.eM / squareM));
      const value = comfort(land, square, lowM, spanM, hasWays ? away[square]! : 0, kind);
      if (value > bestComfort) [best, bestComfort] = [at, value];
    }
    if (best) steads.push({ kind, at: best });
  }
  return steads;
}
