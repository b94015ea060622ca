import type { LinePlan } from '../scenario/schema';
import type { MapPoint, SpacePoint } from '../units/frames';
import { lengthM, type UnitVector } from './directions';
import { type Grid, valueAt } from './grid';
import { between, gapM } from './polyline';
import type { PowerLine, Span, Support } from './world';

/** What the voltage decides. Spacings, radii and sags are common practice, no source. */
const MAKE = {
  low: { kind: 'pole', radiusM: 0.13, spacingM: 0.4, conductorRadiusM: 0.0045, sag: 0.02 },
  medium: { kind: 'pole', radiusM: 0.15, spacingM: 0.95, conductorRadiusM: 0.0065, sag: 0.022 },
  high: { kind: 'tower', radiusM: 1, spacingM: 4.2, conductorRadiusM: 0.0125, sag: 0.028 },
} as const;

/** Least height of a wire over the ground, where the supports allow it; and the flattest sag a wire can be strung to. */
const LEAST_CLEARANCE_M = 5;
const LEAST_SAG = 0.006;
const LEAST_SPAN_M = 24;

type Ground = { readonly groundM: Grid<Float32Array>; readonly sizeM: number };

const inside = (ground: Ground, [eM, nM]: readonly [number, number]): MapPoint => ({
  eM: Math.min(ground.sizeM, Math.max(0, eM)),
  nM: Math.min(ground.sizeM, Math.max(0, nM)),
});

const footAt = (ground: Ground, p: MapPoint): SpacePoint => ({ ...p, zM: valueAt(ground.groundM, p.eM, p.nM) });

/** Largest sag at mid-span that keeps a wire between two points `LEAST_CLEARANCE_M` over the ground; negative where even a taut one is lower. */
export function mostSagM(groundM: Grid<Float32Array>, from: SpacePoint, to: SpacePoint): number {
  const steps = Math.max(4, Math.ceil(gapM(from, to) / (groundM.cellM / 2)));
  let most = Number.POSITIVE_INFINITY;
  for (let i = 1; i < steps; i++) {
    const t = i / steps;
    const p = between(from, to, t);
    const roomM = from.zM + (to.zM - from.zM) * t - valueAt(groundM, p.eM, p.nM) - LEAST_CLEARANCE_M;
    most = Math.min(most, roomM / (4 * t * (1 - t)));
  }
  return most;
}

/** Feet of the supports along the route: at its corners, between them at about the span, and more where the ground comes up to the wire. */
function placeFeet(ground: Ground, plan: LinePlan): SpacePoint[] {
  const corners = plan.route.map((corner) => inside(ground, corner));
  const feet: SpacePoint[] = [footAt(ground, corners[0]!)];
  for (let i = 0; i + 1 < corners.length; i++) {
    const [a, b] = [corners[i]!, corners[i + 1]!];
    const spans = Math.max(1, Math.round(gapM(a, b) / plan.spanM));
    if (gapM(a, b) < 1) continue;
    for (let k = 1; k <= spans; k++) feet.push(...reach(ground, plan, feet[feet.length - 1]!, footAt(ground, between(a, b, k / spans))));
  }
  return feet;
}

/** The feet after `from` up to `to`: one more at the worst place for as long as a taut wire would hang too low. */
function reach(ground: Ground, plan: LinePlan, from: SpacePoint, to: SpacePoint): SpacePoint[] {
  const spanM = gapM(from, to);
  const raised = (p: SpacePoint): SpacePoint => ({ ...p, zM: p.zM + plan.wireHeightM });
  if (spanM < 2 * LEAST_SPAN_M || mostSagM(ground.groundM, raised(from), raised(to)) >= LEAST_SAG * spanM) return [to];
  let worst = 0.5;
  let leastM = Number.POSITIVE_INFINITY;
  for (let t = 0.2; t < 0.81; t += 0.05) {
    const p = footAt(ground, between(from, to, t));
    const roomM = from.zM + (to.zM - from.zM) * t - p.zM;
    if (roomM < leastM) [worst, leastM] = [t, roomM];
  }
  const middle = footAt(ground, between(from, to, worst));
  return [...reach(ground, plan, from, middle), ...reach(ground, plan, middle, to)];
}

/** To the right of the line at a support, halfway between the spans that meet there. */
function rightOf(feet: readonly SpacePoint[], i: number): UnitVector {
  const [a, p, b] = [feet[Math.max(0, i - 1)]!, feet[i]!, feet[Math.min(feet.length - 1, i + 1)]!];
  const unit = (u: MapPoint, v: MapPoint) => {
    const runM = gapM(u, v);
    return runM > 0 ? { east: (v.eM - u.eM) / runM, north: (v.nM - u.nM) / runM } : { east: 0, north: 0 };
  };
  const [before, after] = [unit(a, p), unit(p, b)];
  const east = before.east + after.east;
  const north = before.north + after.north;
  const run = lengthM(east, north);
  return run > 1e-9 ? { east: north / run, north: -east / run } : { east: after.north, north: -after.east };
}

/** One wire from support to support, `asideM` to the right of the line, `upM` over the feet. */
function string(ground: Ground, feet: readonly SpacePoint[], asideM: number, upM: number, sag: number, conductorRadiusM: number): Span[] {
  const ends = feet.map((foot, i): SpacePoint => {
    const right = rightOf(feet, i);
    return { eM: foot.eM + asideM * right.east, nM: foot.nM + asideM * right.north, zM: foot.zM + upM };
  });
  return ends.slice(1).map((to, i) => {
    const from = ends[i]!;
    const spanM = gapM(from, to);
    const sagM = Math.max(LEAST_SAG * spanM, Math.min(sag * spanM, mostSagM(ground.groundM, from, to)));
    return { from, to, sagM, conductorRadiusM };
  });
}

function buildLine(ground: Ground, plan: LinePlan): PowerLine {
  const { kind, radiusM, spacingM, conductorRadiusM, sag } = MAKE[plan.voltage];
  const feet = placeFeet(ground, plan);
  const heightM = Math.max(plan.supportHeightM, plan.wireHeightM);
  const supports: Support[] = feet.map((foot) => ({ foot, heightM, radiusM, kind }));
  const spans: Span[] = [];
  for (let k = 0; k < plan.conductors; k++) {
    const asideM = (k - (plan.conductors - 1) / 2) * spacingM;
    spans.push(...string(ground, feet, asideM, plan.wireHeightM, sag, conductorRadiusM));
  }
  // The earth wire hangs from the tower tops, thinner and tauter than the conductors under it.
  if (plan.voltage === 'high') spans.push(...string(ground, feet, 0, heightM, 0.8 * sag, 0.0055));
  return { voltage: plan.voltage, supports, spans };
}

/** The power lines of a plan. Spans are listed wire after wire, each wire from the first support to the last. */
export const buildPowerLines = (plans: readonly LinePlan[], ground: Ground): PowerLine[] => plans.map((plan) => buildLine(ground, plan));
