import type { GroundClassId, Scenario } from '../scenario/schema';
import type { Complex } from '../units/complex';
import { COVER } from '../world/world';
import { GROUND, permittivity } from './ground';

/** Electrical classes in the order in which a radial numbers them. */
const CLASSES: readonly GroundClassId[] = ['very-dry', 'medium-dry', 'wet', 'fresh-water'];

/** Complex permittivities of the classes at a frequency, by class number. */
export const classPermittivities = (frequencyMHz: number): readonly Complex[] =>
  CLASSES.map((id) => permittivity(GROUND[id], frequencyMHz));

/** Class number of ground with a cover: water, wet land and rock have their own, everything else the scenario's. */
export function groundClassOf(cover: number, scenario: Scenario): number {
  if (cover === COVER.water) return 3;
  if (cover === COVER.wet) return 2;
  if (cover === COVER.rock) return 0;
  return CLASSES.indexOf(scenario.radio.groundClass);
}
