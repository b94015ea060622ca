import { distanceM, type MapPoint, stepAlong } from '../units/frames';
import { valueAt } from '../world/grid';
import { coverAt } from '../world/profile';
import type { World } from '../world/world';
import { directWave, type TagSite } from './directWave';
import { spaceVector } from './echoLeg';
import { REFLECTANCE, ROUGHNESS_M } from './hillCover';
import type { Wave } from './wave';
import { dot, lengthOfVector, minus, unit, type Vector } from './waveVector';

/** A piece of hillside that the tag lights. */
export type Facet = {
  readonly centre: Vector;
  readonly normal: Vector;
  readonly areaM2: number;
  /** Half its size along its plane, metres. */
  readonly halfM: number;
  readonly rho: number;
  readonly roughnessM: number;
  /** What arrives at it from the tag. */
  readonly incident: Wave;
  readonly r1M: number;
};

const MOST_FACETS = 32;
/** Sectors of the search, degrees: few, so that few radials of the terrain field are needed to light them. */
const SECTOR_DEG = 10;
/** Height above the facet at which its lighting is read: clear of the ground's own cancellation, metres (our choice). */
const LIT_AT_M = 8;
/** Nearer hillsides belong to the ground that the direct wave knows, metres. */
const NEAREST_M = 120;

/** The strongest facets round a tag, chosen once per tag position: by area, slope towards the tag, reflectance and distance. */
export function litFacets(site: TagSite): readonly Facet[] {
  const candidates = candidatesRound(site);
  candidates.sort((a, b) => b.weight - a.weight || a.order - b.order);
  return candidates.slice(0, MOST_FACETS).map(({ facet, place }) => ({
    ...facet,
    incident: directWave(site, place, LIT_AT_M, true).wave,
  }));
}

type Candidate = {
  readonly facet: Omit<Facet, 'incident'>;
  readonly place: MapPoint;
  readonly weight: number;
  readonly order: number;
};

function candidatesRound({ world, tagAt, scenario, tagIndex }: TagSite): Candidate[] {
  const tagM = valueAt(world.groundM, tagAt.eM, tagAt.nM) + scenario.tags[tagIndex]!.heightM;
  const tag = spaceVector(tagAt, tagM);
  const found: Candidate[] = [];
  for (let sector = 0; sector < 360; sector += SECTOR_DEG) {
    let horizon = -Infinity;
    let seenTo = 20;
    for (let r = NEAREST_M; ; r *= 1.12) {
      const place = stepAlong(tagAt, sector, r);
      if (place.eM < 0 || place.nM < 0 || place.eM > world.sizeM || place.nM > world.sizeM) break;
      for (; seenTo < r - 30; seenTo += 20) {
        const at = stepAlong(tagAt, sector, seenTo);
        horizon = Math.max(horizon, (valueAt(world.groundM, at.eM, at.nM) - tagM) / seenTo);
      }
      const sizeM = Math.min(200, 0.12 * r + 40);
      const { normal, zM } = planeRound(world, place, sizeM / 2);
      const centre = spaceVector(place, zM + 1);
      if ((centre[2] - tagM) / r < horizon) continue;
      const r1M = lengthOfVector(minus(tag, centre));
      const cosIn = dot(normal, unit(minus(tag, centre)));
      if (cosIn < 0.03) continue;
      const cover = coverAt(world, place.eM, place.nM);
      const areaM2 = (2 * r * Math.sin((SECTOR_DEG * Math.PI) / 360) * 0.12 * r) / normal[2];
      const rho = REFLECTANCE[cover] ?? 0.05;
      const facet = { centre, normal, areaM2, halfM: sizeM / 2, rho, roughnessM: ROUGHNESS_M[cover] ?? 0.5, r1M };
      found.push({ facet, place, weight: (rho * cosIn * cosIn * areaM2) / r1M ** 3, order: found.length });
    }
  }
  return found;
}

/** Mean plane of the ground within `halfM` of a place. */
function planeRound(world: World, place: MapPoint, halfM: number): { normal: Vector; zM: number } {
  const at = (e: number, n: number) => valueAt(world.groundM, place.eM + e * halfM, place.nM + n * halfM);
  const east = (at(1, 0) - at(-1, 0) + (at(1, 1) - at(-1, 1) + at(1, -1) - at(-1, -1)) / 2) / (4 * halfM);
  const north = (at(0, 1) - at(0, -1) + (at(1, 1) - at(1, -1) + at(-1, 1) - at(-1, -1)) / 2) / (4 * halfM);
  return { normal: unit([-east, -north, 1]), zM: (at(0, 0) + at(1, 0) + at(-1, 0) + at(0, 1) + at(0, -1)) / 5 };
}

/** Is a facet so near the walker that it is the ground under foot? Share 0 to 1 that remains of its echo. */
export const awayShare = (facet: Facet, at: MapPoint): number => {
  const d = distanceM({ eM: facet.centre[0], nM: facet.centre[1] }, at);
  return Math.min(1, Math.max(0, (d - 40) / 60));
};
