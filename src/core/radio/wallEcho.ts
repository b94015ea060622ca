import type { Complex } from '../units/complex';
import { valueAt } from '../world/grid';
import type { Building } from '../world/world';
import { directWave, type TagSite } from './directWave';
import { echoWave, secondLegDb, sightOf, spaceVector } from './echoLeg';
import type { EchoScene } from './hillEcho';
import { mirrored } from './mirror';
import type { Wave } from './wave';
import { wavelengthM, waveNumber } from './wavelength';
import { across, along, dot, fieldOf, fieldSquared, lengthOfVector, lookVector, minus, turnField, unit, type Vector } from './waveVector';

/** Field of a plate's echo over the direct field: |G| A cos i d / (lambda r1 r2), never above the mirror's |G| d / (r1 + r2). Derived for this project. */
export function plateEchoRatio(
  gamma: number,
  areaM2: number,
  cosIn: number,
  lambdaM: number,
  r1M: number,
  r2M: number,
  directM: number,
): number {
  return Math.min((gamma * areaM2 * cosIn * directM) / (lambdaM * r1M * r2M), (gamma * directM) / (r1M + r2M));
}

/** A wall of a building: centre of its face, outward normal, along it, size. */
type Face = {
  readonly centre: Vector;
  readonly normal: Vector;
  readonly side: Vector;
  readonly widthM: number;
  readonly heightM: number;
  readonly metal: boolean;
};

/** A wall that the tag lights. */
export type LitFace = Face & { readonly incident: Wave; readonly r1M: number };

/** Concrete and stone at VHF: 7 - j 0.3, common practice, no source. */
const STONE: Complex = { re: 7, im: -0.3 };
/** Most walls taken, nearest first. */
const MOST_FACES = 48;

/** Faces of all buildings that look towards the tag, lit once per tag position. */
export function litFaces(site: TagSite): readonly LitFace[] {
  const { world, tagAt, scenario, tagIndex } = site;
  const tag = spaceVector(tagAt, valueAt(world.groundM, tagAt.eM, tagAt.nM) + scenario.tags[tagIndex]!.heightM);
  const lit = world.buildings
    .flatMap(facesOf)
    .map((face) => ({ ...face, r1M: lengthOfVector(minus(tag, face.centre)), cosIn: dot(face.normal, unit(minus(tag, face.centre))) }))
    .filter((face) => face.cosIn > 0)
    .sort((a, b) => a.r1M - b.r1M)
    .slice(0, MOST_FACES);
  return lit.map(({ cosIn: _cos, ...face }) => ({
    ...face,
    incident: directWave(site, { eM: face.centre[0], nM: face.centre[1] }, face.heightM / 2, true).wave,
  }));
}

function facesOf(building: Building): readonly Face[] {
  const middle = building.corners.reduce<Vector>((sum, c) => [sum[0] + c.eM / 4, sum[1] + c.nM / 4, 0], [0, 0, 0]);
  return building.corners.map((from, i) => {
    const to = building.corners[(i + 1) % 4]!;
    const widthM = Math.hypot(to.eM - from.eM, to.nM - from.nM);
    const side: Vector = [(to.eM - from.eM) / widthM, (to.nM - from.nM) / widthM, 0];
    const centre: Vector = [(from.eM + to.eM) / 2, (from.nM + to.nM) / 2, building.groundM + building.heightM / 2];
    const aside: Vector = [side[1], -side[0], 0];
    const outward = aside[0] * (centre[0] - middle[0]) + aside[1] * (centre[1] - middle[1]) >= 0 ? aside : along(aside, -1);
    return { centre, normal: outward, side, widthM, heightM: building.heightM, metal: building.walls === 'metal' };
  });
}

/**
 * Waves from walls at a receiver: the plate's main lobe round the mirror direction, narrowed by its size, widened by the Fresnel zone.
 * Waves under `leastPower`, (V/m)^2 for 1 W, are left out.
 */
export function wallEchoes(faces: readonly LitFace[], scene: EchoScene, leastPower = 0): readonly Wave[] {
  return faces.flatMap((face) => {
    const sight = sightOf(scene.receiver, face.centre);
    const r2M = Math.max(1, lengthOfVector(sight));
    const towards = along(unit(sight), -1);
    if (dot(towards, face.normal) <= 0) return [];
    const travel = along(lookVector(face.incident.azimuthDeg, face.incident.elevationDeg), -1);
    const cosIn = Math.max(0, -dot(travel, face.normal));
    const amplitude = plateAmplitude(face, travel, towards, r2M, cosIn, scene.frequencyMHz);
    // no wall sends back more than metal does
    if (amplitude ** 2 * fieldSquared(face.incident) < leastPower) return [];
    const secondDb = secondLegDb(scene.world, face.centre, scene.receiver, scene.frequencyMHz);
    const angle = -waveNumber(scene.frequencyMHz) * r2M;
    const size = amplitude * 10 ** (-secondDb / 20) * Math.min(1, dot(towards, face.normal) * 8);
    const field = mirrored(fieldOf(face.incident), travel, face.normal, face.metal ? undefined : STONE);
    const turned = turnField(
      { re: across(field.re, towards), im: across(field.im, towards) },
      { re: size * Math.cos(angle), im: size * Math.sin(angle) },
    );
    return [echoWave('wall', sight, turned, face.r1M + r2M, { first: face.incident.lossDb, secondDb }, scene.frequencyMHz)];
  });
}

/** Amplitude over the incident field, reflection coefficient apart: plate formula, mirror cap, and the lobe in both planes. */
function plateAmplitude(face: LitFace, travel: Vector, towards: Vector, r2M: number, cosIn: number, frequencyMHz: number): number {
  const lambdaM = wavelengthM(frequencyMHz);
  const zoneM = Math.sqrt((lambdaM * face.r1M * r2M) / (face.r1M + r2M));
  const miss = minus(towards, travel);
  const lobe = (size: number, axis: Vector) => {
    const x = (Math.PI * Math.min(size, zoneM) * dot(miss, axis)) / lambdaM;
    return Math.abs(x) < 1e-6 ? 1 : Math.sin(x) / x;
  };
  const plain = (face.widthM * face.heightM * cosIn) / (lambdaM * r2M);
  const mirror = face.r1M / (face.r1M + r2M);
  return Math.min(plain, mirror) * lobe(face.widthM, face.side) * lobe(face.heightM, [0, 0, 1]);
}
