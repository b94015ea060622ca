import { addPowersDb } from '../units/decibels';
import { heardSnrDb } from './detection';

/**
 * Loudness as a listener has it. Levels out of the receiver are dB re the limiter's ceiling; a listener in quiet just
 * hears a pulse 55 dB under the ceiling at a usual volume (our choice within the 50 to 60 dB that practice gives), and the
 * hearing check moves that.
 */
export const USUAL_QUIET_THRESHOLD_DB = -55;

/** What is known of a listener: how far the threshold lies above (+) or below (-) the usual one, dB. */
export type Listener = { readonly thresholdDb: number };
export const USUAL_LISTENER: Listener = { thresholdDb: 0 };

/** Noise that stands for the quiet threshold: with it alone, a pulse at the threshold is heard three times in four. */
export const innerNoiseDb = (listener: Listener, pulseMs: number): number =>
  USUAL_QUIET_THRESHOLD_DB + listener.thresholdDb - heardSnrDb(pulseMs);

/** Noise that a pulse has to be heard in: out of the receiver and of the ear, dB re the ceiling. */
export const earNoiseDb = (noiseDb: number, listener: Listener, pulseMs: number): number =>
  addPowersDb(noiseDb, innerNoiseDb(listener, pulseMs));

/** Level of a pulse that is heard three times in four in this noise, dB re the ceiling. */
export const thresholdDb = (noiseDb: number, listener: Listener, pulseMs: number): number =>
  earNoiseDb(noiseDb, listener, pulseMs) + heardSnrDb(pulseMs);

/** Loudness of a sound over a threshold in noise, arbitrary units: I^0.27 - I0^0.27, 0 below the threshold. */
export function loudnessInNoise(levelDb: number, overThresholdOfDb: number): number {
  return Math.max(0, 10 ** (0.027 * (levelDb - USUAL_QUIET_THRESHOLD_DB)) - 10 ** (0.027 * (overThresholdOfDb - USUAL_QUIET_THRESHOLD_DB)));
}

/** Smallest step of level that is told apart, dB at a sensation level. Jesteadt 1977, value from memory: dI/I = 0.463 (I/I0)^-0.072. */
export const levelStepDb = (sensationDb: number): number => 10 * Math.log10(1 + 0.463 * 10 ** (-0.0072 * sensationDb));
