import type { Scenario } from '../scenario/schema';
import type { MapPoint } from '../units/frames';
import type { World } from '../world/world';
import { directWave } from './directWave';
import { type FieldCache, makeFieldCache } from './fieldCache';
import type { Arrivals } from './wave';

export { wavePowerDbm } from './waveVector';

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
};

/** What one tag in one place gives everywhere. The answer at a point does not depend on what was asked before. */
export function makeAirspace({ scenario, world, tagIndex, tagAt }: AirspaceInput): Airspace {
  const tag = scenario.tags[tagIndex]!;
  const field = makeFieldCache({ scenario, world, tagAt, tagHeightM: tag.heightM, frequencyMHz: tag.frequencyMHz });
  const site = { scenario, world, tagIndex, tagAt, field };
  return {
    field,
    arrivalsAt(point, antennaHeightM) {
      const direct = directWave(site, point, antennaHeightM);
      return { waves: [direct.wave], warnings: direct.flatShare < 1 ? field.warningsAt(point) : [] };
    },
  };
}
