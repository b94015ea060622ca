import type { MapPoint, SpacePoint } from '../units/frames';
import { pointOver } from './height';
import { EARTH_RADIUS_M, lineOfSight } from './lineOfSight';
import { gapM } from './polyline';
import { coverAt, profileBetween } from './profile';
import { COVER, type World } from './world';

/** What stands on a cell and hides what lies behind, metres; our choice, that of the skyline strip for woods. */
const STANDS_M: Readonly<Record<number, number>> = { [COVER.wood]: 12, [COVER.scrub]: 2, [COVER.built]: 7 };
/** Round the eye one looks between the trees. */
const ROUND_EYE_M = 25;

/** Does an eye see something low on the ground at a place? Ground, woods, scrub and buildings hide; what lies in a wood is hidden. */
export function isInView(world: World, eye: SpacePoint, place: MapPoint, heightM: number): boolean {
  const cover = coverAt(world, place.eM, place.nM);
  if (cover === COVER.wood || cover === COVER.built) return false;
  const target = pointOver(world, place, heightM);
  return lineOfSight(world, eye, target).clear && !isHiddenByCover(world, eye, target);
}

function isHiddenByCover(world: World, eye: SpacePoint, target: SpacePoint): boolean {
  const lengthM = gapM(eye, target);
  if (lengthM < 2 * ROUND_EYE_M) return false;
  const { groundM, cover, stepM } = profileBetween(world, eye, target);
  for (let i = 1; i + 1 < groundM.length; i++) {
    const alongM = i * stepM;
    const standsM = STANDS_M[cover[i]!];
    if (standsM === undefined || alongM < ROUND_EYE_M) continue;
    // The scrub that the place itself lies in does not hide it.
    if (cover[i] === COVER.scrub && lengthM - alongM < ROUND_EYE_M) continue;
    const lineM = eye.zM + ((target.zM - eye.zM) * alongM) / lengthM - (alongM * (lengthM - alongM)) / (2 * EARTH_RADIUS_M);
    if (groundM[i]! + standsM > lineM) return true;
  }
  return false;
}
