import { type Listener, thresholdDb } from '../ear/loudness';
import { flatEarthRatio } from '../radio/flatEarth';
import { freeSpaceLossDb } from '../radio/freeSpace';
import { GROUND, permittivity } from '../radio/ground';
import { driveDb, limitedDb } from '../receiver/limiter';
import { outsideOf } from '../receiver/receive';
import type { Scenario } from '../scenario/schema';
import { addPowersDb, toDb } from '../units/decibels';
import { distanceM, type MapPoint } from '../units/frames';
import { valueAt } from '../world/grid';
import { groundHeightM } from '../world/height';
import type { World } from '../world/world';
import { buzzHere } from './buzz';
import type { Exercise } from './exercise';
import { noiseDbm } from './sense';
import { antennaHeightM, type Controls, type Hold, TICKS_PER_S } from './state';
import { tagAt } from './tagMotion';

/**
 * What a walker may reckon with from the map and the list of tags alone: never where a tag is, how it lies, or how strong it is now.
 * A tag is taken as it is written down, lying crosswise to the way between, on ground that slopes as the map says.
 */

/**
 * Level that a tag at a place brings to an isotropic antenna of its own polarization at the walker, dBm: free space and the ground
 * in front of the tag, over which the walker stands so high as the slope there lets him. Reflection that adds up is not counted on.
 * @source free space ITU-R P.525; ground by Norton's closed form, see `flatEarth.ts`; the tangent plane at the tag is our choice
 */
export function crosswiseDbm(scenario: Scenario, world: World, tag: number, place: MapPoint, from: MapPoint, heightM: number): number {
  const { frequencyMHz, eirpDbm, heightM: tagHeightM } = scenario.tags[tag]!;
  const lengthM = Math.max(5, distanceM(from, place));
  const eps = permittivity(GROUND[scenario.radio.groundClass], frequencyMHz);
  const overPlaneM = groundHeightM(world, from) + heightM - planeAt(world, place, from);
  const path = { distanceM: lengthM, h1M: Math.min(lengthM, Math.max(heightM, overPlaneM)), h2M: tagHeightM };
  const { re, im } = flatEarthRatio(eps, 'h', frequencyMHz, path);
  return eirpDbm - freeSpaceLossDb(lengthM, frequencyMHz) + Math.min(0, toDb(re * re + im * im));
}

/** Height at `at` of the plane that touches the ground at `place`, metres above sea level. */
function planeAt({ groundM, cellM }: World, { eM, nM }: MapPoint, at: MapPoint): number {
  const slopeEast = (valueAt(groundM, eM + cellM, nM) - valueAt(groundM, eM - cellM, nM)) / (2 * cellM);
  const slopeNorth = (valueAt(groundM, eM, nM + cellM) - valueAt(groundM, eM, nM - cellM)) / (2 * cellM);
  return valueAt(groundM, eM, nM) + slopeEast * (at.eM - eM) + slopeNorth * (at.nM - nM);
}

/** What the antenna as it is held makes of a level wave from a bearing, dB over an isotropic one. */
export function levelWaveGainDb(exercise: Exercise, tag: number, hold: Hold, fromDeg: number): number {
  const azimuth = (fromDeg * Math.PI) / 180;
  const across = { eastRe: Math.cos(azimuth), northRe: -Math.sin(azimuth), upRe: 0, eastIm: 0, northIm: 0, upIm: 0 };
  const wave = { azimuthDeg: fromDeg, elevationDeg: 0, ...across };
  return toDb(exercise.antenna(hold.antenna, tag).fan([wave])(hold.headingDeg, hold.rollDeg, hold.raised));
}

export type Ears = { readonly listener: Listener; readonly pulseMs: number };

/**
 * The weakest power at the antenna's terminal that is heard three times in four at a setting, dBm; `null` where none is. `buzzDbm` is
 * what sparking lines bring to the terminal, which the walker hears.
 */
export function leastHeardDbm(
  exercise: Exercise,
  { gainDb, attenuatorDb }: Pick<Controls, 'gainDb' | 'attenuatorDb'>,
  buzzDbm: number,
  { listener, pulseMs }: Ears,
): number | null {
  const outside = outsideOf({ ...noiseDbm(exercise), buzzDbm }, { gainDb, attenuatorDb });
  const neededDb = thresholdDb(addPowersDb(outside.noiseDb, outside.buzzDb - 3), listener, pulseMs);
  const heard = (powerDbm: number) => limitedDb(driveDb(powerDbm - attenuatorDb, gainDb)) >= neededDb;
  let [low, high] = [-180, 40];
  if (!heard(high)) return null;
  while (high - low > 0.05) {
    const middle = (low + high) / 2;
    if (heard(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** The buzz of lines at a place as the antenna is held, dBm: it is heard, whatever the tag does. */
export function buzzAt(exercise: Exercise, at: MapPoint, hold: Hold, tick: number): number {
  return buzzHere(exercise, 0, tagAt(exercise.scenario, 0, tick / TICKS_PER_S), at, antennaHeightM(hold))(hold);
}
