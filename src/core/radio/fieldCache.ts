import type { Scenario } from '../scenario/schema';
import { bearingDeg, distanceM, type MapPoint, stepAlong } from '../units/frames';
import { valueAt } from '../world/grid';
import { coverAt } from '../world/profile';
import type { World } from '../world/world';
import { complexHeightM, type Polarization } from './ground';
import { classPermittivities, groundClassOf } from './groundClass';
import { smoothStep } from './handOver';
import { computeRadial, type RadialRequest, type RadialResult } from './radial';

/** Terrain field round one tag position: radials on fixed azimuths, computed when first needed or put in by a worker. */
export type FieldCache = {
  /**
   * Excess over free space at the horizontal distance, dB, both polarizations, at a point and height above its ground.
   * `nearest` takes the nearest whole-degree radial alone: for fixed places that only light an echo.
   */
  readonly excessAt: (point: MapPoint, heightM: number, nearest?: boolean) => { readonly vDb: number; readonly hDb: number };
  /** Requests of the radials that these points need and that are not here yet. */
  readonly neededRadials: (points: readonly MapPoint[]) => readonly RadialRequest[];
  readonly put: (result: RadialResult) => void;
  /** Every radial that is here: what a worker hands over. */
  readonly known: () => readonly RadialResult[];
  /** What the radials towards a point say of their range of validity. */
  readonly warningsAt: (point: MapPoint) => readonly string[];
};

export type FieldSite = {
  readonly scenario: Scenario;
  readonly world: World;
  readonly tagAt: MapPoint;
  readonly tagHeightM: number;
  readonly frequencyMHz: number;
};

/** Heights of the table, metres above the ground; the upper ones serve wires and climbed places. */
const HEIGHTS_M = [0.5, 1.7, 4, 8, 16, 32];
/** Half-degree radials take over gradually between these distances, so that nothing steps. */
const COARSE_UP_TO_M = 2_800;
const FINE_FROM_M = 3_200;
const RADIALS = 720;
/** A share smaller than this is rounding of the azimuth, not a neighbour. */
const LEAST_SHARE = 1e-9;

export function makeFieldCache(site: FieldSite): FieldCache {
  const { scenario, world, tagAt, frequencyMHz } = site;
  const kept = new Map<number, RadialResult>();
  const permittivities = classPermittivities(frequencyMHz);
  const scales = { v: heightScale(site, 'v'), h: heightScale(site, 'h') };

  function request(index: number): RadialRequest {
    const stepM = Math.max(10, world.cellM);
    const points = Math.max(20, Math.ceil(reachM(tagAt, index / 2, world.sizeM) / stepM) + 2);
    const groundM = new Float32Array(points);
    const groundOf = new Uint8Array(points);
    for (let i = 0; i < points; i++) {
      const at = stepAlong(tagAt, index / 2, i * stepM);
      const middle = stepAlong(tagAt, index / 2, (i + (i === 0 ? 0 : 0.5)) * stepM);
      groundM[i] = valueAt(world.groundM, at.eM, at.nM);
      groundOf[i] = groundClassOf(coverAt(world, middle.eM, middle.nM), scenario);
    }
    return { index, frequencyMHz, txHeightM: site.tagHeightM, stepM, groundM, groundOf, permittivities, heightsM: HEIGHTS_M };
  }

  function radial(index: number): RadialResult {
    const known = kept.get(index);
    if (known) return known;
    const made = computeRadial(request(index));
    kept.set(index, made);
    return made;
  }

  function excessAt(point: MapPoint, heightM: number, nearest = false): { vDb: number; hDb: number } {
    let [vDb, hDb] = [0, 0];
    for (const { index, share } of nearest ? nearestRadial(tagAt, point) : neighbours(tagAt, point)) {
      const from = radial(index);
      vDb += share * alongRadial(from.vDb, from.stepM, distanceM(tagAt, point), scales.v, heightM);
      hDb += share * alongRadial(from.hDb, from.stepM, distanceM(tagAt, point), scales.h, heightM);
    }
    return { vDb, hDb };
  }

  return {
    excessAt,
    put: (result) => void kept.set(result.index, result),
    known: () => [...kept.values()],
    neededRadials(points) {
      const missing = new Set<number>();
      for (const point of points) for (const { index } of neighbours(tagAt, point)) if (!kept.has(index)) missing.add(index);
      return [...missing].sort((a, b) => a - b).map(request);
    },
    warningsAt: (point) => [...new Set(neighbours(tagAt, point).flatMap(({ index }) => radial(index).warnings))],
  };
}

/** Radials on both sides of a point with their shares: whole degrees near, half degrees far, both in between. */
function neighbours(tagAt: MapPoint, point: MapPoint): readonly { index: number; share: number }[] {
  const azimuth = 2 * bearingDeg(tagAt, point);
  const fine = smoothStep(COARSE_UP_TO_M, FINE_FROM_M, distanceM(tagAt, point));
  const shares = new Map<number, number>();
  const give = (spacing: number, weight: number) => {
    if (weight === 0) return;
    const first = Math.floor(azimuth / spacing) * spacing;
    const share = (azimuth - first) / spacing;
    for (const [index, part] of [
      [first % RADIALS, 1 - share],
      [(first + spacing) % RADIALS, share],
    ] as const)
      if (part > LEAST_SHARE) shares.set(index, (shares.get(index) ?? 0) + weight * part);
  };
  give(2, 1 - fine);
  give(1, fine);
  return [...shares].map(([index, share]) => ({ index, share }));
}

const nearestRadial = (tagAt: MapPoint, point: MapPoint) => [{ index: (2 * Math.round(bearingDeg(tagAt, point))) % RADIALS, share: 1 }];

/** How far the map goes from a point along a bearing, metres. */
function reachM(from: MapPoint, alongDeg: number, sizeM: number): number {
  const towards = stepAlong({ eM: 0, nM: 0 }, alongDeg, 1);
  const limit = (at: number, by: number) => (by > 1e-9 ? (sizeM - at) / by : by < -1e-9 ? -at / by : Number.POSITIVE_INFINITY);
  return Math.max(0, Math.min(limit(from.eM, towards.eM), limit(from.nM, towards.nM)));
}

type HeightScale = (heightM: number) => { readonly row: number; readonly share: number; readonly addDb: number };

/**
 * Where a height lies in the table. Between rows dB go straight against log(h + |z|), z the ground's complex height, because the
 * field near the ground goes as |h - jz|; under the first row exactly so; over the last it stays.
 */
function heightScale({ scenario, world, tagAt, frequencyMHz }: FieldSite, polarization: Polarization): HeightScale {
  const eps = classPermittivities(frequencyMHz)[groundClassOf(coverAt(world, tagAt.eM, tagAt.nM), scenario)]!;
  const z = complexHeightM(eps, polarization, frequencyMHz);
  const gainDb = (h: number) => 10 * Math.log10((h + z.im) ** 2 + z.re ** 2);
  const at = (h: number) => Math.log(h + Math.hypot(z.re, z.im));
  return (heightM) => {
    if (heightM <= HEIGHTS_M[0]!) return { row: 0, share: 0, addDb: gainDb(HEIGHTS_M[0]!) - gainDb(heightM) };
    let row = 0;
    while (row < HEIGHTS_M.length - 2 && HEIGHTS_M[row + 1]! < heightM) row++;
    const share = (at(heightM) - at(HEIGHTS_M[row]!)) / (at(HEIGHTS_M[row + 1]!) - at(HEIGHTS_M[row]!));
    return { row, share: Math.min(1, share), addDb: 0 };
  };
}

/** Linear in range and in the height scale, dB. */
function alongRadial(db: Float32Array, stepM: number, rangeM: number, scale: HeightScale, heightM: number): number {
  const heights = HEIGHTS_M.length;
  const { row, share, addDb } = scale(heightM);
  const last = db.length / heights - 2;
  const place = Math.min(last + 1, rangeM / stepM);
  const i = Math.min(last, Math.floor(place));
  const at = (range: number) => {
    const low = db[range * heights + row]!;
    return low + (db[range * heights + row + 1]! - low) * share;
  };
  const near = at(i);
  return near + (at(i + 1) - near) * (place - i) + addDb;
}
