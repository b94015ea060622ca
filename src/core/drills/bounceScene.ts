import { type Air, makeAir, TAG_MHZ } from '../listening/air';
import type { Spot } from '../listening/picture';
import { CHEST_M, makeSmallScene } from '../listening/smallScene';
import { GROUND, permittivity } from '../radio/ground';
import { hillEchoes } from '../radio/hillEcho';
import type { Facet } from '../radio/hillFacets';
import type { Wave } from '../radio/wave';
import { lengthOfVector, minus, unit, type Vector, wavePowerDbm } from '../radio/waveVector';
import { toRad, turnDeg } from '../units/angles';
import { type MapPoint, stepAlong } from '../units/frames';
import type { Drawn } from './drawn';
import { EIRP_DBM } from './plainView';

const SIZE_M = 1_400;
const HOME: MapPoint = { eM: 700, nM: 300 };
const HILL = { heightM: 120, widthM: 300, facetUpM: 170 } as const;
const SHINE = { sizeM: 150, reflectance: 0.25, roughnessM: 1 } as const;
/** Largest and smallest piece of hillside that shines, metres across. */
const SHINE_M = { from: 30, to: 340 } as const;
/** A hillside weaker than this against the wave over the ridge is not worth a drill, dB. */
const WEAKEST_DB = -7;

/** The whip lies across the line of sight: held flat, the antenna hears a narrow lobe, and two sides keep apart. */
const LYING = { leanDeg: 80, towardDeg: 90 } as const;

/** A tag behind a ridge and a hillside that looks over it: two loud sides, one of them false. */
export type BounceScene = {
  readonly courseDeg: number;
  readonly tagSpot: Spot;
  readonly shineSpot: Spot;
  /** Bearings of tag and hillside from a place of the walk. */
  readonly sidesDeg: (walkM: number) => { readonly trueDeg: number; readonly falseDeg: number };
  readonly air: (walkM: number) => Air;
  /** Hillside's power less the direct wave's, dB. */
  readonly falseLessTrueDb: (walkM: number) => number;
};

/** Hillsides nearer or farther than this are none, metres. */
const AWAY_M = { from: 130, to: 330 } as const;
/** Beyond this a walk is no quick test any more, metres. */
const LONGEST_WALK_M = 165;
/** Swing of the true side over such a walk, roughly, degrees. */
const TRUE_SWING_DEG = 6;

/**
 * Walk begins at the origin of the scene's plan; the tag lies due north, the hillside on either hand behind, so near that the false side
 * swings by `level` degrees over a walk. `null` where the hillside can't be as strong as the wave over the ridge.
 */
export function bounceScene(by: Drawn, level: number): BounceScene | null {
  const tag: MapPoint = { eM: HOME.eM, nM: HOME.nM + by.between(620, 900) };
  const ridge = { nM: HOME.nM + by.between(240, 330), heightM: by.between(40, 54), halfWidthM: by.between(110, 150) };
  const side = by.side();
  const falseDeg = side * by.between(105, 160);
  const farthestM = Math.min(AWAY_M.to, LONGEST_WALK_M / Math.tan(toRad(level + TRUE_SWING_DEG)));
  const centre = stepAlong(HOME, falseDeg, by.between(AWAY_M.from, Math.max(AWAY_M.from, farthestM)));
  // The face looks half way between tag and walker, so the ground rises away from there.
  const [toTag, toHome] = [tag, HOME].map((p) => unit([p.eM - centre.eM, p.nM - centre.nM, 0])) as [Vector, Vector];
  const facing = unit([toTag[0] + toHome[0], toTag[1] + toHome[1], 0]);
  const heightM = (eM: number, nM: number): number => {
    const uphillM = HILL.facetUpM - (eM - centre.eM) * facing[0] - (nM - centre.nM) * facing[1];
    const up = Math.min(1, Math.max(0, uphillM / HILL.widthM));
    return 100 + ridge.heightM * Math.exp(-(((nM - ridge.nM) / ridge.halfWidthM) ** 2)) + HILL.heightM * up * up * (3 - 2 * up);
  };
  const small = makeSmallScene({ sizeM: SIZE_M, cellM: 20, tag: { at: tag, ...LYING }, heightM, relief: HILL.heightM });
  const at: Vector = [centre.eM, centre.nM, heightM(centre.eM, centre.nM) + 1];
  const slope = (e: number, n: number) => (heightM(centre.eM + e, centre.nM + n) - heightM(centre.eM - e, centre.nM - n)) / 40;
  const facet: Facet = {
    centre: at,
    normal: unit([-slope(20, 0), -slope(0, 20), 1]),
    areaM2: SHINE.sizeM ** 2,
    halfM: SHINE.sizeM / 2,
    rho: SHINE.reflectance,
    roughnessM: SHINE.roughnessM,
    incident: small.direct(centre, 8),
    r1M: lengthOfVector(minus([tag.eM, tag.nM, heightM(tag.eM, tag.nM)], at)),
  };
  // Across the line to the hillside, which is where it swings most.
  const courseDeg = falseDeg + side * by.between(-110, -70);
  const placeAt = (walkM: number): MapPoint => stepAlong(HOME, courseDeg, walkM);
  const eps = permittivity(GROUND.wet, TAG_MHZ);
  const wavesFrom = (lit: Facet, walkM: number): readonly Wave[] => {
    const place = placeAt(walkM);
    const receiver: Vector = [place.eM, place.nM, heightM(place.eM, place.nM) + CHEST_M];
    return [small.direct(place), ...hillEchoes([lit], { world: small.world, receiver, frequencyMHz: TAG_MHZ, eps })];
  };
  const gapDb = (waves: readonly Wave[]): number =>
    waves.length < 2 ? Number.NEGATIVE_INFINITY : wavePowerDbm(waves[1]!, EIRP_DBM, TAG_MHZ) - wavePowerDbm(waves[0]!, EIRP_DBM, TAG_MHZ);
  const plainGapDb = gapDb(wavesFrom(facet, 0));
  const sizeM = Math.min(SHINE_M.to, Math.max(SHINE_M.from, SHINE.sizeM * 10 ** ((by.between(-3, 5) - plainGapDb) / 20)));
  if (plainGapDb + 20 * Math.log10(sizeM / SHINE.sizeM) < WEAKEST_DB) return null;
  const shining = { ...facet, areaM2: sizeM ** 2, halfM: sizeM / 2 };
  return {
    courseDeg,
    tagSpot: [tag.eM - HOME.eM, tag.nM - HOME.nM],
    shineSpot: [centre.eM - HOME.eM, centre.nM - HOME.nM],
    sidesDeg: (walkM) => {
      const place = placeAt(walkM);
      const bearingTo = (to: MapPoint) => (Math.atan2(to.eM - place.eM, to.nM - place.nM) * 180) / Math.PI;
      return { trueDeg: bearingTo(tag), falseDeg: bearingTo(centre) };
    },
    air: (walkM) => makeAir({ waves: wavesFrom(shining, walkM), eirpDbm: EIRP_DBM }),
    falseLessTrueDb: (walkM) => gapDb(wavesFrom(shining, walkM)),
  };
}

/** How much more the false side swings than the true one over a walk, degrees. */
export function swingDeg(scene: BounceScene, walkM: number): number {
  const [first, last] = [scene.sidesDeg(0), scene.sidesDeg(walkM)];
  return Math.abs(turnDeg(first.falseDeg, last.falseDeg)) - Math.abs(turnDeg(first.trueDeg, last.trueDeg));
}

/** A place of the walk on the scene's plan. */
export const walkSpot = ({ courseDeg }: BounceScene, walkM: number): Spot => [
  walkM * Math.sin(toRad(courseDeg)),
  walkM * Math.cos(toRad(courseDeg)),
];
