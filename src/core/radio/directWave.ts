import type { Scenario } from '../scenario/schema';
import { toDeg } from '../units/angles';
import { type Complex, exponential, magnitude, multiply, scale } from '../units/complex';
import { bearingDeg, distanceM, type MapPoint } from '../units/frames';
import { valueAt } from '../world/grid';
import { coverAt } from '../world/profile';
import type { World } from '../world/world';
import type { FieldCache } from './fieldCache';
import { flatEarthRatio } from './flatEarth';
import { freeSpaceFieldVPerM, freeSpaceLossDb, nearFieldRadial, nearFieldTransverse } from './freeSpace';
import { classPermittivities, groundClassOf } from './groundClass';
import { fittedPlane, flatEarthShare } from './handOver';
import { type SightString, sightString } from './sightString';
import type { Wave } from './wave';
import { waveNumber } from './wavelength';
import { along, dot, lookVector, plus, rightOf, upOf, type Vector, waveOf, whipVector } from './waveVector';
import { woodlandLossDb } from './woodland';

/** A tag in its place, with what its direct wave needs. */
export type TagSite = {
  readonly scenario: Scenario;
  readonly world: World;
  readonly tagIndex: number;
  readonly tagAt: MapPoint;
  readonly field: FieldCache;
};

/** The direct wave and the ground it came over. */
export type Direct = { readonly wave: Wave; readonly string: SightString; readonly flatShare: number };

/** Antennas never come nearer than this in the model, metres: the near field has no bound. */
const LEAST_DISTANCE_M = 0.3;

/** The wave straight from the tag: over the ground or round it, through the trees on its way. `nearest`: see `FieldCache.excessAt`. */
export function directWave(site: TagSite, point: MapPoint, heightM: number, nearest = false): Direct {
  const { scenario, world, tagAt } = site;
  const tag = scenario.tags[site.tagIndex]!;
  const mhz = tag.frequencyMHz;
  const d = Math.max(0.01, distanceM(tagAt, point));
  const rise = valueAt(world.groundM, point.eM, point.nM) + heightM - valueAt(world.groundM, tagAt.eM, tagAt.nM) - tag.heightM;
  const slantM = Math.max(LEAST_DISTANCE_M, Math.hypot(d, rise));
  const string = sightString(world, { ...tagAt, heightM: tag.heightM }, { ...point, heightM });
  const plane = fittedPlane(string.xM, string.zM, tag.heightM, heightM);
  const flatShare = flatEarthShare(d, plane.departureM, mhz);
  const eps = classPermittivities(mhz)[groundClassOf(coverAt(world, tagAt.eM, tagAt.nM), scenario)]!;
  const flatPath = { distanceM: d, h1M: plane.h1M, h2M: plane.h2M };
  const flat = { v: flatEarthRatio(eps, 'v', mhz, flatPath), h: flatEarthRatio(eps, 'h', mhz, flatPath) };
  const field = flatShare < 1 ? site.field.excessAt(point, heightM, nearest) : { vDb: 0, hDb: 0 };
  const slantDb = 20 * Math.log10(slantM / d);
  const woodDb = woodlandLossDb(string.woodM, mhz);
  const factor = (ratio: Complex, fieldDb: number): Complex => {
    const flatDb = -20 * Math.log10(Math.max(1e-9, magnitude(ratio)));
    const excessDb = flatShare * flatDb + (flatShare < 1 ? (1 - flatShare) * (fieldDb - slantDb) : 0) + woodDb;
    return scale(ratio, 10 ** (-excessDb / 20) / Math.max(1e-9, magnitude(ratio)));
  };
  const azimuthDeg = bearingDeg(point, tagAt);
  const factors = { v: factor(flat.v, field.vDb), h: factor(flat.h, field.hDb) };
  const wave = vectorWave({ azimuthDeg, slantM, string, factors, flat, woodDb, whip: whipVector(tag.whip), mhz });
  return { wave, string, flatShare };
}

type Parts = {
  readonly azimuthDeg: number;
  readonly slantM: number;
  readonly string: SightString;
  /** Field over free space for each polarization, all losses in, and what flat ground alone makes of it. */
  readonly factors: { readonly v: Complex; readonly h: Complex };
  readonly flat: { readonly v: Complex; readonly h: Complex };
  readonly woodDb: number;
  readonly whip: Vector;
  readonly mhz: number;
};

/** Turns the whip's upright and level parts, each with its own factor, into the field at the far end. */
function vectorWave({ azimuthDeg, slantM, string, factors, flat, woodDb, whip, mhz }: Parts): Wave {
  const elevationDeg = toDeg(Math.atan(string.slopeAtSecond));
  const leavingDeg = toDeg(Math.atan(string.slopeAtFirst));
  // upward across the ray as it leaves: the same vector as seen from the far end looking back along a ray that falls
  const pUp = dot(whip, upOf(azimuthDeg, -leavingDeg));
  const pRight = dot(whip, rightOf(azimuthDeg));
  const pAlong = dot(whip, lookVector(azimuthDeg + 180, leavingDeg));
  const phase = exponential({ re: 0, im: -waveNumber(mhz) * slantM });
  const size = scale(phase, freeSpaceFieldVPerM(slantM));
  const transverse = multiply(size, nearFieldTransverse(slantM, mhz));
  const v = scale(multiply(transverse, factors.v), pUp);
  const h = scale(multiply(transverse, factors.h), pRight);
  // against the transverse part a short dipole's radial part has the other sign, hence along the look direction
  const radial = scale(multiply(size, nearFieldRadial(slantM, mhz)), pAlong * magnitude(factors.v));
  const [up, right, look] = [upOf(azimuthDeg, elevationDeg), rightOf(azimuthDeg), lookVector(azimuthDeg, elevationDeg)];
  const sum = (part: 're' | 'im') => plus(plus(along(up, v[part]), along(right, h[part])), along(look, radial[part]));
  const [re, im] = [sum('re'), sum('im')];
  const shown = Math.max(1e-9, pUp ** 2 + pRight ** 2);
  const powers = Math.max(1e-30, dot(re, re) + dot(im, im));
  const wholeDb = -10 * Math.log10(powers / freeSpaceFieldVPerM(slantM) ** 2);
  const polarization = -10 * Math.log10(shown);
  const ground = -10 * Math.log10(Math.max(1e-18, ((pUp * magnitude(flat.v)) ** 2 + (pRight * magnitude(flat.h)) ** 2) / shown));
  return waveOf('direct', azimuthDeg, elevationDeg, re, im, {
    freeSpace: freeSpaceLossDb(slantM, mhz),
    ground,
    terrain: wholeDb - ground - polarization - woodDb,
    wood: woodDb,
    polarization,
  });
}
