import type { Received } from '../receiver/receive';
import { addPowersDb } from '../units/decibels';
import { detectionChance } from './detection';
import { earNoiseDb, type Listener, thresholdDb } from './loudness';

/** What a listener has of one pulse. Nothing in it says where the tag is. */
export type HeardPulse = {
  readonly atS: number;
  readonly durationS: number;
  readonly pitchHz: number;
  /** Out of the receiver, dB re the limiter's ceiling. */
  readonly levelDb: number;
  /** Above this listener's threshold in the present noise, dB; negative is fainter than the threshold. */
  readonly loudnessDb: number;
  readonly audible: boolean;
  readonly flatOut: boolean;
  readonly sUnits: number;
};

/** Chance that this listener hears the pulse. */
export function hearingChance(received: Received, pulseMs: number, listener: Listener): number {
  return detectionChance(received.levelDb - earNoiseDb(noiseAndBuzzDb(received), listener, pulseMs), pulseMs);
}

/** Loudness above this listener's threshold in the present noise, dB. */
export const loudnessDb = (received: Received, pulseMs: number, listener: Listener): number =>
  received.levelDb - thresholdDb(noiseAndBuzzDb(received), listener, pulseMs);

// A buzz masks less than its power says because it comes in bursts: half of it counts (our choice).
const noiseAndBuzzDb = (received: Received): number => addPowersDb(received.noiseDb, received.buzzDb - 3);
