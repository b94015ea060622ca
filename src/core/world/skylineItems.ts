import type { MapPoint } from '../units/frames';
import { lengthM } from './directions';
import { EARTH_RADIUS_M } from './lineOfSight';
import type { Eye, SkylineLayer } from './skyline';
import { binToward } from './skylineBins';
import type { World } from './world';

const WIRE_POINTS = 9;

/** A thing that stands in the view. `toward` is its unit vector from the eye; slopes are rise over run to its top and foot. */
export type SkylineItem = {
  readonly kind: 'pole' | 'tower' | 'building';
  readonly toward: { readonly east: number; readonly north: number };
  readonly distanceM: number;
  readonly topSlope: number;
  readonly footSlope: number;
  /** Half its width over its distance. */
  readonly halfWidth: number;
  /** True if its top stands over the ground and woods between. */
  readonly isSeen: boolean;
};

/** One wire of one span as a few points, each a unit vector and a slope, for drawing. */
export type SkylineWire = {
  readonly east: Float32Array;
  readonly north: Float32Array;
  readonly slope: Float32Array;
  readonly distanceM: number;
};

/** Highest slope of ground and woods between the eye and a thing, from the crests nearer than it. */
function hiddenBelow(layers: readonly SkylineLayer[], bin: number, distanceM: number): number {
  let slope = Number.NEGATIVE_INFINITY;
  for (const layer of layers)
    if (layer.distanceM[bin]! > 0 && layer.distanceM[bin]! < 0.97 * distanceM) slope = Math.max(slope, layer.slope[bin]!);
  return slope;
}

function itemFor(
  eye: Eye,
  layers: readonly SkylineLayer[],
  kind: SkylineItem['kind'],
  at: MapPoint,
  footM: number,
  heightM: number,
  halfM: number,
): SkylineItem {
  const distanceM = Math.max(1, lengthM(at.eM - eye.eM, at.nM - eye.nM));
  const toward = { east: (at.eM - eye.eM) / distanceM, north: (at.nM - eye.nM) / distanceM };
  const dropM = (distanceM * distanceM) / (2 * EARTH_RADIUS_M);
  const topSlope = (footM + heightM - dropM - eye.zM) / distanceM;
  const footSlope = (footM - dropM - eye.zM) / distanceM;
  const isSeen = topSlope > hiddenBelow(layers, binToward(toward.east, toward.north), distanceM);
  return { kind, toward, distanceM, topSlope, footSlope, halfWidth: halfM / distanceM, isSeen };
}

/** Every span of every line as it hangs before the eye. */
export function wiresOf(world: World, eye: Eye): SkylineWire[] {
  const wires: SkylineWire[] = [];
  for (const { spans } of world.powerLines)
    for (const { from, to, sagM } of spans) {
      const [east, north, slope] = [new Float32Array(WIRE_POINTS), new Float32Array(WIRE_POINTS), new Float32Array(WIRE_POINTS)];
      let nearestM = Number.POSITIVE_INFINITY;
      for (let i = 0; i < WIRE_POINTS; i++) {
        const t = i / (WIRE_POINTS - 1);
        const e = from.eM + (to.eM - from.eM) * t - eye.eM;
        const n = from.nM + (to.nM - from.nM) * t - eye.nM;
        const awayM = Math.max(1, lengthM(e, n));
        nearestM = Math.min(nearestM, awayM);
        east[i] = e / awayM;
        north[i] = n / awayM;
        slope[i] = (from.zM + (to.zM - from.zM) * t - 4 * sagM * t * (1 - t) - eye.zM) / awayM;
      }
      wires.push({ east, north, slope, distanceM: nearestM });
    }
  return wires;
}

/** Supports and buildings before the eye, the farthest first, so that they can be drawn in order. */
export function itemsOf(world: World, eye: Eye, layers: readonly SkylineLayer[]): SkylineItem[] {
  const items: SkylineItem[] = [];
  for (const { supports } of world.powerLines)
    for (const { foot, heightM, kind } of supports)
      items.push(itemFor(eye, layers, kind, foot, foot.zM, heightM, kind === 'tower' ? 3 : 0.15));
  for (const { corners, groundM, heightM } of world.buildings) {
    const [a, , c] = corners;
    const middle = { eM: (a.eM + c.eM) / 2, nM: (a.nM + c.nM) / 2 };
    items.push(itemFor(eye, layers, 'building', middle, groundM, heightM, lengthM(a.eM - c.eM, a.nM - c.nM) / 2));
  }
  return items.sort((a, b) => b.distanceM - a.distanceM);
}
