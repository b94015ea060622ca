import { antennaById } from '../../core/antenna/catalogue';
import type { HeardPulse } from '../../core/ear/hear';
import type { RunState } from '../../core/run/state';
import { isAtVehicle } from '../../core/run/vehicle';
import { readDeg } from './measures';

/** 047°, from the north that the learner reads bearings from. */
export const bearingText = (trueDeg: number): string => `${String(Math.round(readDeg(trueDeg)) % 360).padStart(3, '0')}°`;

const WINDS = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'] as const;
/** A bearing from map north as a wind's name. */
export const windOf = (deg: number): string => WINDS[Math.round(deg / 45) % 8]!;

/** Why the legs, or the wheels, stand. */
export function blockedWords({ vehicle, hold, at }: Pick<RunState, 'vehicle' | 'hold' | 'at'>): string {
  if (vehicle?.aboard) return 'no road or track that way';
  const keptBack = vehicle !== null && !antennaById(hold.antenna).onFoot && isAtVehicle({ vehicle, at });
  return keptBack ? 'this antenna stays at the vehicle: change it first' : 'no way through here';
}

/** 4:07, 1:04:07 */
export function clockText(wholeS: number): string {
  const [hours, minutes, seconds] = [Math.floor(wholeS / 3600), Math.floor(wholeS / 60) % 60, wholeS % 60];
  const tail = `${hours > 0 ? String(minutes).padStart(2, '0') : minutes}:${String(seconds).padStart(2, '0')}`;
  return hours > 0 ? `${hours}:${tail}` : tail;
}

/** How loud, in a word or two: what captions say. */
export function loudnessWords(heard: Pick<HeardPulse, 'audible' | 'flatOut' | 'loudnessDb'> | null): string {
  if (!heard?.audible) return 'nothing heard';
  if (heard.flatOut) return 'beep: flat out';
  const { loudnessDb } = heard;
  return `beep: ${loudnessDb < 6 ? 'just heard' : loudnessDb < 15 ? 'faint' : loudnessDb < 28 ? 'clear' : loudnessDb < 42 ? 'loud' : 'very loud'}`;
}
