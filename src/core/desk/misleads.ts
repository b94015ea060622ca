import type { ArrowKind } from '../debrief/lossBudget';
import { distanceM, type MapPoint } from '../units/frames';
import type { RehearsedBearing, RehearsedWalk } from './rehearsedWalk';

/** A bearing off by more misleads. */
export const MISLEADS_DEG = 15;
/** Bearings so near to one another were taken at one place. */
const ONE_PLACE_M = 80;

export const misleads = ({ errorDeg }: RehearsedBearing): boolean => Math.abs(errorDeg) > MISLEADS_DEG;

/** A place where bearings mislead. */
export type MisleadingPlace = {
  readonly at: MapPoint;
  readonly bearings: number;
  /** Middle error without its side, degrees. */
  readonly offDeg: number;
  /** What most of them followed. */
  readonly by: ArrowKind;
};

/** Where the rehearsals were misled, most bearings first: each bearing goes to the fullest place within reach, which is its middle. */
export function misleadingPlaces(walks: readonly RehearsedWalk[]): readonly MisleadingPlace[] {
  let left = walks.flatMap(({ bearings }) => bearings.filter(misleads));
  const places: MisleadingPlace[] = [];
  while (left.length > 0) {
    const groups = left.map(({ at }) => left.filter((other) => distanceM(at, other.at) <= ONE_PLACE_M));
    const fullest = groups.reduce((most, group) => (group.length > most.length ? group : most));
    places.push(placeOf(fullest));
    left = left.filter((one) => !fullest.includes(one));
  }
  return places;
}

function placeOf(group: readonly RehearsedBearing[]): MisleadingPlace {
  const mean = (of: (one: RehearsedBearing) => number) => group.reduce((sum, one) => sum + of(one), 0) / group.length;
  const count = (by: ArrowKind) => group.filter((one) => one.by === by).length;
  return {
    at: { eM: Math.round(mean(({ at }) => at.eM)), nM: Math.round(mean(({ at }) => at.nM)) },
    bearings: group.length,
    offDeg: mean(({ errorDeg }) => Math.abs(errorDeg)),
    by: group.reduce((most, { by }) => (count(by) > count(most) ? by : most), group[0]!.by),
  };
}
