import type { Scenario } from '../scenario/schema';
import type { MapPoint } from '../units/frames';
import { valueAt } from '../world/grid';
import type { World } from '../world/world';
import { directWave } from './directWave';
import { spaceVector } from './echoLeg';
import { type FieldCache, makeFieldCache } from './fieldCache';
import { lineNoiseAt, type NoiseSource } from './gapNoise';
import { GROUND, permittivity } from './ground';
import { smoothStep } from './handOver';
import { hillEchoes } from './hillEcho';
import { litFacets } from './hillFacets';
import { textKey } from './integerHash';
import { litLines } from './litLine';
import { coverShares, scatterWaves } from './localScatter';
import { lineEchoes } from './powerLineEcho';
import { litFaces, wallEchoes } from './wallEcho';
import type { Arrivals } from './wave';
import { fieldSquared } from './waveVector';

export { wavePowerDbm } from './waveVector';

/** Loss by terrain from which surroundings begin to count as shadow, and where they wholly do, dB. Our choice. */
const SHADOW_FROM_DB = 8;
const SHADOW_DEEP_DB = 28;

/** Waves of walls and lines 60 dB under the strongest from the land are left out: even 25 dB down in an antenna's null that is 0.15 dB. */
const LEAST_SHARE = 1e-6;

export type AirspaceInput = {
  readonly scenario: Scenario;
  readonly world: World;
  readonly tagIndex: number;
  /** Where the tag is now. */
  readonly tagAt: MapPoint;
};

/** Every wave from one tag at any point of the map. */
export type Airspace = {
  /** The waves at an antenna `antennaHeightM` above the ground. */
  readonly arrivalsAt: (point: MapPoint, antennaHeightM: number) => Arrivals;
  /** The terrain field round the tag: may be filled ahead of the walker from workers. */
  readonly field: FieldCache;
  /** Sparking supports of power lines as sources of noise at a point, isotropic power in 2.5 kHz. */
  readonly lineNoiseAt: (point: MapPoint, antennaHeightM: number) => readonly NoiseSource[];
};

/** What one tag in one place gives everywhere. The answer at a point does not depend on what was asked before. */
export function makeAirspace({ scenario, world, tagIndex, tagAt }: AirspaceInput): Airspace {
  const tag = scenario.tags[tagIndex]!;
  const frequencyMHz = tag.frequencyMHz;
  const field = makeFieldCache({ scenario, world, tagAt, tagHeightM: tag.heightM, frequencyMHz });
  const site = { scenario, world, tagIndex, tagAt, field };
  const lit = once(() => ({ facets: litFacets(site), faces: litFaces(site), lines: litLines(site) }));
  const eps = permittivity(GROUND[scenario.radio.groundClass], frequencyMHz);
  const tagKey = textKey(`${scenario.seed}/${tagIndex}`);
  const hills = Math.min(1, scenario.ground.relief.strengthM / 200);
  return {
    field,
    arrivalsAt(point, antennaHeightM) {
      const direct = directWave(site, point, antennaHeightM);
      const receiver = spaceVector(point, valueAt(world.groundM, point.eM, point.nM) + antennaHeightM);
      const scene = { world, receiver, frequencyMHz, eps };
      const { facets, faces, lines } = lit();
      const fromLand = [direct.wave, ...hillEchoes(facets, scene)];
      const leastPower = LEAST_SHARE * fromLand.reduce((most, wave) => Math.max(most, fieldSquared(wave)), 0);
      const coherent = [...fromLand, ...wallEchoes(faces, scene, leastPower), ...lineEchoes(lines, scene, leastPower)];
      const shadow = smoothStep(SHADOW_FROM_DB, SHADOW_DEEP_DB, direct.wave.lossDb.terrain ?? 0);
      const around = { ...coverShares(world, point.eM, point.nM), hills, shadow };
      const scatter = scatterWaves(coherent, { tagKey, ...point, frequencyMHz }, around);
      return { waves: [...coherent, ...scatter], warnings: direct.flatShare < 1 ? field.warningsAt(point) : [] };
    },
    lineNoiseAt: (point, antennaHeightM) => lineNoiseAt(scenario, world, frequencyMHz, point, antennaHeightM),
  };
}

/** Computes at the first call only: lighting the echoes costs radials of the terrain field. */
function once<T>(make: () => T): () => T {
  let made: { value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
