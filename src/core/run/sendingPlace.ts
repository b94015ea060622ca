import type { Scenario } from '../scenario/schema';
import type { MapPoint } from '../units/frames';
import { tagAt } from './tagMotion';

/** Moving tags send from lattice places, so that what was computed for one is used again. */
const LATTICE_M = 10;

const onLattice = (m: number, sizeM: number): number => Math.min(sizeM - 1, Math.max(1, Math.round(m / LATTICE_M) * LATTICE_M));

/** From where a tag that is at a place sends, for the radio model. */
export function sendingPlace(scenario: Scenario, tag: number, { eM, nM }: MapPoint): MapPoint {
  const { sizeM } = scenario.ground;
  return scenario.tags[tag]!.movement.kind === 'stays' ? { eM, nM } : { eM: onLattice(eM, sizeM), nM: onLattice(nM, sizeM) };
}

/** All places from which a tag sends between two times of the run, seconds, in their order; one that it only grazes may be wanting. */
export function sendingPlaces(scenario: Scenario, tag: number, fromS: number, toS: number): readonly MapPoint[] {
  const { movement } = scenario.tags[tag]!;
  const stepS = movement.kind === 'stays' ? Number.POSITIVE_INFINITY : LATTICE_M / 8 / movement.speedMPerS;
  const places: MapPoint[] = [];
  for (let s = fromS; s <= toS; s += stepS) {
    const place = sendingPlace(scenario, tag, tagAt(scenario, tag, s));
    const last = places.at(-1);
    if (last?.eM !== place.eM || last.nM !== place.nM) places.push(place);
  }
  return places;
}
