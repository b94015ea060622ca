import { type Complex, scale } from '../units/complex';
import type { World } from '../world/world';
import { echoWave, secondLegDb, sightOf } from './echoLeg';
import { roughnessFactor } from './ground';
import { awayShare, type Facet } from './hillFacets';
import { hashShare } from './integerHash';
import { mirrored } from './mirror';
import type { Wave } from './wave';
import { waveNumber } from './wavelength';
import {
  across,
  addFields,
  along,
  dot,
  type Field,
  fieldOf,
  fieldPower,
  lengthOfVector,
  lookVector,
  minus,
  turnField,
  unit,
  type Vector,
} from './waveVector';

/** Where an echo is received, and the ground's permittivity for mirrors. */
export type EchoScene = { readonly world: World; readonly receiver: Vector; readonly frequencyMHz: number; readonly eps: Complex };

/** Power of a Lambert facet's echo over the direct free-space power: sigma0 A d^2 / (4 pi r1^2 r2^2), sigma0 = 4 rho cos i cos s. Derived for this project. */
export const lambertEchoRatio = (
  rho: number,
  areaM2: number,
  cosIn: number,
  cosOut: number,
  r1M: number,
  r2M: number,
  directM: number,
): number => (4 * rho * cosIn * cosOut * areaM2 * directM ** 2) / (4 * Math.PI * r1M ** 2 * r2M ** 2);

/** Phase of a facet's rough part: its own, and that of the way. */
function roughPhase(index: number, k: number, r2M: number): Complex {
  const angle = 2 * Math.PI * hashShare(index, 977) - k * r2M;
  return { re: Math.cos(angle), im: Math.sin(angle) };
}

/**
 * Waves from hillsides at a receiver: the rough (Lambert) part from the facet's centre and the mirror part weighed by how near the
 * mirror point lies to the centre, both with the second leg's loss.
 */
export function hillEchoes(facets: readonly Facet[], scene: EchoScene): readonly Wave[] {
  return facets.flatMap((facet, index) => {
    const sight = sightOf(scene.receiver, facet.centre);
    const r2M = lengthOfVector(sight);
    const cosOut = -dot(facet.normal, unit(sight));
    const away = awayShare(facet, { eM: scene.receiver[0], nM: scene.receiver[1] });
    if (cosOut <= 0 || away === 0) return [];
    const secondDb = secondLegDb(scene.world, facet.centre, scene.receiver, scene.frequencyMHz);
    const incident = fieldOf(facet.incident);
    const size = away * 10 ** (-secondDb / 20);
    const rough = roughField(facet, incident, scene, { index, r2M, cosOut, size });
    const mirror = mirrorField(facet, incident, scene, r2M, size);
    return [
      echoWave(
        'hillside',
        sight,
        addFields(rough, mirror),
        facet.r1M + r2M,
        { first: facet.incident.lossDb, secondDb },
        scene.frequencyMHz,
      ),
    ];
  });
}

type Out = { readonly index: number; readonly r2M: number; readonly cosOut: number; readonly size: number };

function roughField(facet: Facet, incident: Field, scene: EchoScene, { index, r2M, cosOut, size }: Out): Field {
  const k = waveNumber(scene.frequencyMHz);
  const towardsTag = lookVector(facet.incident.azimuthDeg, facet.incident.elevationDeg);
  const cosIn = Math.max(0, dot(facet.normal, towardsTag));
  const amplitude = (size * Math.sqrt((4 * facet.rho * cosIn * cosOut * facet.areaM2) / (4 * Math.PI))) / r2M;
  const travel = unit(sightOf(scene.receiver, facet.centre));
  const kept = { re: across(incident.re, travel), im: across(incident.im, travel) };
  // the rough echo's power follows Lambert's law whatever the polarization; its direction is the transverse part of the incoming
  const whole = Math.sqrt(fieldPower(incident) / Math.max(1e-30, fieldPower(kept)));
  return turnField(kept, scale(roughPhase(index, k, r2M), amplitude * Math.min(3, whole)));
}

function mirrorField(facet: Facet, incident: Field, scene: EchoScene, r2M: number, size: number): Field {
  const k = waveNumber(scene.frequencyMHz);
  const travel = along(lookVector(facet.incident.azimuthDeg, facet.incident.elevationDeg), -1);
  const out = minus(travel, along(facet.normal, 2 * dot(travel, facet.normal)));
  const towards = along(unit(sightOf(scene.receiver, facet.centre)), -1);
  // distance between where the mirrored ray passes and the receiver, back on the facet
  const missM = (lengthOfVector(minus(out, towards)) * facet.r1M * r2M) / (facet.r1M + r2M);
  const sine = Math.max(0, -dot(travel, facet.normal));
  const window = Math.exp(-((missM / facet.halfM) ** 2)) * roughnessFactor(facet.roughnessM, sine, scene.frequencyMHz);
  const amplitude = (size * window * facet.r1M) / (facet.r1M + r2M);
  const angle = -k * r2M;
  const field = mirrored(incident, travel, facet.normal, scene.eps);
  return turnField(
    { re: across(field.re, towards), im: across(field.im, towards) },
    { re: amplitude * Math.cos(angle), im: amplitude * Math.sin(angle) },
  );
}
