import type { MapPoint } from '../units/frames';
import { valueAt } from './grid';
import { EARTH_RADIUS_M } from './lineOfSight';
import { coverAt } from './profile';
import { BIN_DIRECTIONS, SKYLINE_BINS } from './skylineBins';
import { itemsOf, type SkylineItem, type SkylineWire, wiresOf } from './skylineItems';
import { COVER, type World } from './world';

export type { SkylineItem, SkylineWire } from './skylineItems';

/** Where one band of distance ends and the next begins, metres: near, middle, far, farther, farthest. */
export const SKYLINE_BANDS_M = [0, 120, 350, 800, 1_600, 10_000] as const;

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

export type Skyline = {
  readonly bins: number;
  readonly layers: readonly SkylineLayer[];
  readonly items: readonly SkylineItem[];
  readonly wires: readonly SkylineWire[];
};

/** What stands on the ground and makes the crest higher, metres. Our choice for drawing; the radio model has its own canopy. */
const CANOPY_M: Readonly<Record<number, number>> = { [COVER.wood]: 12, [COVER.scrub]: 2 };
const STEP_GROWTH = 1.035;

/** The eye's place and height above sea level. */
export type Eye = MapPoint & { readonly zM: number };

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

/** What the eye sees all round from a place: crests by band of distance, things that stand up, wires. */
export function skylineLayers(world: World, from: MapPoint, eyeHeightM: number): Skyline {
  const eye = { ...from, zM: valueAt(world.groundM, from.eM, from.nM) + eyeHeightM };
  const layers = emptyLayers();
  for (let bin = 0; bin < SKYLINE_BINS; bin++) castBin(world, eye, bin, layers);
  return { bins: SKYLINE_BINS, layers, items: itemsOf(world, eye, layers), wires: wiresOf(world, eye) };
}
