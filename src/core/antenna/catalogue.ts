import type { AntennaId } from '../scenario/schema';
import type { Antenna } from './antenna';
import { loop } from './loop';
import { phased2 } from './phased2';
import { whip } from './whip';
import { yagi2 } from './yagi2';
import { yagi3 } from './yagi3';
import { yagi5 } from './yagi5';

/** Every antenna that can be carried, the everyday one first. */
export const ANTENNAS: readonly Antenna[] = [yagi3, yagi2, phased2, yagi5, loop, whip];

/** @throws RangeError for an id that no antenna has */
export function antennaById(id: AntennaId): Antenna {
  const found = ANTENNAS.find((antenna) => antenna.id === id);
  if (!found) throw new RangeError(`no antenna is called "${id}"`);
  return found;
}

/** Why an antenna can't be built for a design frequency, or null where it can. */
export function fitsFrequency(antenna: Antenna, designMHz: number): string | null {
  if (designMHz >= antenna.leastMHz) return null;
  const elementM = (0.5 * 299.792458) / designMHz;
  return `${antenna.name}: elements of ${elementM.toFixed(1)} m at ${designMHz} MHz are too long for the hand; take the loop or the whip below ${antenna.leastMHz} MHz`;
}
