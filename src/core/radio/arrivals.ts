import type { Scenario } from '../scenario/schema';
import { toDeg } from '../units/angles';
import { bearingDeg, distanceM, type MapPoint } from '../units/frames';
import { valueAt } from '../world/grid';
import { profileBetween } from '../world/profile';
import type { World } from '../world/world';
import { deltaBullingtonDb } from './deltaBullington';
import { flatEarthExcessDb } from './flatEarth';
import { freeSpaceFieldVPerM, freeSpaceLossDb } from './freeSpace';
import { GROUND, permittivity } from './ground';
import type { Arrivals } from './wave';
import { along, dot, plus, rightOf, upOf, waveOf, whipVector } from './waveVector';

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
};

/** First form: free space, then flat earth in view or delta-Bullington behind ground. */
export function makeAirspace({ scenario, world, tagIndex, tagAt }: AirspaceInput): Airspace {
  const tag = scenario.tags[tagIndex]!;
  const ground = GROUND[scenario.radio.groundClass];
  const eps = permittivity(ground, tag.frequencyMHz);
  const whip = whipVector(tag.whip);
  return {
    arrivalsAt(point, antennaHeightM) {
      const flatM = Math.max(0.5, distanceM(tagAt, point));
      const rise = valueAt(world.groundM, point.eM, point.nM) + antennaHeightM - valueAt(world.groundM, tagAt.eM, tagAt.nM) - tag.heightM;
      const slantM = Math.hypot(flatM, rise);
      const azimuthDeg = bearingDeg(point, tagAt);
      const elevationDeg = toDeg(Math.atan2(-rise, flatM));
      const profile = profileBetween(world, tagAt, point);
      const path = {
        distancesM: Float64Array.from(profile.groundM, (_, i) => Math.max(i * 1e-3, i * profile.stepM)),
        heightsM: profile.groundM,
        txHeightM: tag.heightM,
        rxHeightM: antennaHeightM,
        frequencyMHz: tag.frequencyMHz,
      };
      const lossDb = (['v', 'h'] as const).map(
        (p) =>
          flatEarthExcessDb(eps, p, tag.frequencyMHz, { distanceM: flatM, h1M: tag.heightM, h2M: antennaHeightM }) +
          deltaBullingtonDb(path, ground, p),
      );
      const up = upOf(azimuthDeg, elevationDeg);
      const right = rightOf(azimuthDeg);
      const field = freeSpaceFieldVPerM(slantM);
      const vector = plus(
        along(up, field * dot(whip, up) * 10 ** (-lossDb[0]! / 20)),
        along(right, field * dot(whip, right) * 10 ** (-lossDb[1]! / 20)),
      );
      const budget = { freeSpace: freeSpaceLossDb(slantM, tag.frequencyMHz), terrain: lossDb[0]! };
      return { waves: [waveOf('direct', azimuthDeg, elevationDeg, vector, [0, 0, 0], budget)], warnings: [] };
    },
  };
}
export { wavePowerDbm } from './waveVector';
