import type { MapPoint } from '../units/frames';
import { lengthM, unitDirections } from './directions';
import { valueAt } from './grid';
import { EARTH_RADIUS_M } from './lineOfSight';
import { coverAt } from './profile';
import { COVER, type World } from './world';

/** Where one band of distance ends and the next begins, metres: near, middle, far, farther, farthest. */
export const SKYLINE_BANDS_M = [0, 120, 350, 800, 1_600, 10_000] as const;
export const SKYLINE_BINS = 720;

/** One band of distance all round; a value per bin, bin 0 to the north, clockwise. */
export type SkylineLayer = {
  readonly fromM: number;
  readonly toM: number;
  /** Rise over run from the eye to the band's crest, woods at their height; -Infinity where the band lies past the map's edge. */
  readonly slope: Float32Array;
  /** Distance of that crest, metres; 0 where there is none. */
  readonly distanceM: Float32Array;
  /** COVER number at the crest. */
  readonly cover: Uint8Array;
  /** 1 where the crest stands over everything nearer. */
  readonly isSeen: Uint8Array;
};

/** A thing that stands in the view. `toward` is its unit vector from the eye; slopes are rise over run to its top and foot. */
export type SkylineItem = {
  readonly kind: 'pole' | 'tower' | 'building';
  readonly toward: { readonly east: number; readonly north: number };
  readonly distanceM: number;
  readonly topSlope: number;
  readonly footSlope: number;
  /** Half its width over its distance. */
  readonly halfWidth: number;
  /** True if its top stands over the ground between. */
  readonly isSeen: boolean;
};

/** One wire of one span as a few points, each a unit vector and a slope, for drawing. */
export type SkylineWire = {
  readonly east: Float32Array;
  readonly north: Float32Array;
  readonly slope: Float32Array;
  readonly distanceM: number;
};

export type Skyline = {
  readonly bins: number;
  readonly layers: readonly SkylineLayer[];
  readonly items: readonly SkylineItem[];
  readonly wires: readonly SkylineWire[];
};

/** What stands on the ground and makes the crest higher, metres. Our choice for drawing; the radio model has its own canopy. */
const CANOPY_M: Readonly<Record<number, number>> = { [COVER.wood]: 12, [COVER.scrub]: 2 };
const STEP_GROWTH = 1.035;
const WIRE_POINTS = 9;
const BIN_DIRECTIONS = unitDirections(SKYLINE_BINS);

type Eye = MapPoint & { readonly zM: number };

function emptyLayers(): SkylineLayer[] {
  return SKYLINE_BANDS_M.slice(1).map((toM, i) => ({
    fromM: SKYLINE_BANDS_M[i]!,
    toM,
    slope: new Float32Array(SKYLINE_BINS).fill(Number.NEGATIVE_INFINITY),
    distanceM: new Float32Array(SKYLINE_BINS),
    cover: new Uint8Array(SKYLINE_BINS),
    isSeen: new Uint8Array(SKYLINE_BINS),
  }));
}

/** Walks outward along one bin, keeping each band's highest point. Hot: 720 bins a view, some 90 steps each. */
function castBin(world: World, eye: Eye, bin: number, layers: readonly SkylineLayer[]): void {
  const east = BIN_DIRECTIONS.east[bin]!;
  const north = BIN_DIRECTIONS.north[bin]!;
  const { groundM, sizeM } = world;
  let band = 0;
  let stepM = 5;
  let seenSlope = Number.NEGATIVE_INFINITY;
  for (let r = stepM; band < layers.length; r += stepM) {
    const e = eye.eM + r * east;
    const n = eye.nM + r * north;
    if (e < 0 || n < 0 || e > sizeM || n > sizeM) break;
    if (r >= layers[band]!.toM) {
      seenSlope = Math.max(seenSlope, layers[band]!.slope[bin]!);
      band++;
      if (band >= layers.length) break;
    }
    const layer = layers[band]!;
    const cover = coverAt(world, e, n);
    // Trees right beside the eye would wall it in: there one looks between the trunks.
    const canopyM = r > 25 ? (CANOPY_M[cover] ?? 0) : 0;
    const slope = (valueAt(groundM, e, n) + canopyM - (r * r) / (2 * EARTH_RADIUS_M) - eye.zM) / r;
    if (slope > layer.slope[bin]!) {
      layer.slope[bin] = slope;
      layer.distanceM[bin] = r;
      layer.cover[bin] = cover;
      layer.isSeen[bin] = slope > seenSlope ? 1 : 0;
    }
    stepM *= STEP_GROWTH;
  }
}

/** Highest slope of the bare ground between the eye and a thing, from `castBin`'s layers nearer than it. */
function hiddenBelow(layers: readonly SkylineLayer[], bin: number, distanceM: number): number {
  let slope = Number.NEGATIVE_INFINITY;
  for (const layer of layers)
    if (layer.distanceM[bin]! > 0 && layer.distanceM[bin]! < 0.97 * distanceM) slope = Math.max(slope, layer.slope[bin]!);
  return slope;
}

/** The bin a unit vector falls into, by halving; no arc functions, so that every engine agrees. */
export function binToward(east: number, north: number): number {
  let low = 0;
  let high = SKYLINE_BINS / 2;
  // On the western side the search runs over the half turn that starts in the south.
  const offset = east < 0 || (east === 0 && north < 0) ? SKYLINE_BINS / 2 : 0;
  const [e, n] = offset ? [-east, -north] : [east, north];
  while (high - low > 1) {
    const mid = Math.floor((low + high) / 2);
    if (BIN_DIRECTIONS.north[mid]! * e - BIN_DIRECTIONS.east[mid]! * n >= 0) low = mid;
    else high = mid;
  }
  return low + offset;
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

function wiresOf(world: World, eye: Eye): SkylineWire[] {
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

/** What the eye sees all round from a place: crests by band of distance, things that stand up, wires. */
export function skylineLayers(world: World, from: MapPoint, eyeHeightM: number): Skyline {
  const eye = { ...from, zM: valueAt(world.groundM, from.eM, from.nM) + eyeHeightM };
  const layers = emptyLayers();
  for (let bin = 0; bin < SKYLINE_BINS; bin++) castBin(world, eye, bin, layers);
  const items: SkylineItem[] = [];
  for (const { supports } of world.powerLines)
    for (const { foot, heightM, kind } of supports)
      items.push(itemFor(eye, layers, kind, foot, foot.zM, heightM, kind === 'tower' ? 3 : 0.15));
  for (const { corners, groundM, heightM } of world.buildings) {
    const [a, , c] = corners;
    const middle = { eM: (a.eM + c.eM) / 2, nM: (a.nM + c.nM) / 2 };
    items.push(itemFor(eye, layers, 'building', middle, groundM, heightM, lengthM(a.eM - c.eM, a.nM - c.nM) / 2));
  }
  items.sort((a, b) => b.distanceM - a.distanceM);
  return { bins: SKYLINE_BINS, layers, items, wires: wiresOf(world, eye) };
}
