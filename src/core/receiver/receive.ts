import { addPowersDb } from '../units/decibels';
import { driveDb, FULL_GAIN_DB, limitedDb } from './limiter';
import { sUnits } from './sMeter';
import { pitchHz, tuningLossDb } from './tuning';

/** What comes to the antenna terminal for one pulse, and from everything else. */
export type AtTerminal = {
  readonly powerDbm: number;
  /** What an isotropic pick-up would have: the case hears this, whatever the antenna's heading. */
  readonly isotropicDbm: number;
  readonly tagMHz: number;
  /** Outside noise in the receiver's bandwidth at the terminal, dBm, man-made and galactic. */
  readonly outsideNoiseDbm: number;
  /** Receiver's own noise referred to its input, dBm. */
  readonly ownNoiseDbm: number;
  /** Buzz from a power line through the antenna pattern, dBm; -Infinity where there is none. */
  readonly buzzDbm: number;
};

export type Setting = { readonly gainDb: number; readonly attenuatorDb: number; readonly tunedMHz: number };

/** What comes out of the receiver, dB re the limiter's ceiling. */
export type Received = {
  readonly pitchHz: number;
  /** Drive of the limiter before it limits. */
  readonly driveDb: number;
  readonly levelDb: number;
  readonly noiseDb: number;
  readonly buzzDb: number;
  /** The limiter takes 3 dB or more: turning the antenna changes little. */
  readonly flatOut: boolean;
  readonly sUnits: number;
};

/** Pick-up of the case itself against an isotropic antenna, dB: a path past antenna and attenuator (our choice). */
export const CASE_PICKUP_DB = -45;

/** One pulse through attenuator, gain, filter and limiter. No automatic gain anywhere. */
export function receive(input: AtTerminal, setting: Setting): Received {
  const noteHz = pitchHz(input.tagMHz, setting.tunedMHz);
  const tuneDb = tuningLossDb(noteHz);
  const signalDbm = addPowersDb(input.powerDbm - setting.attenuatorDb, input.isotropicDbm + CASE_PICKUP_DB) - tuneDb;
  const drive = driveDb(signalDbm, setting.gainDb);
  const outside = outsideOf(input, setting);
  return {
    pitchHz: noteHz,
    driveDb: drive,
    levelDb: limitedDb(drive),
    noiseDb: outside.noiseDb,
    buzzDb: outside.buzzDb,
    flatOut: drive >= 0,
    sUnits: sUnits(signalDbm, setting.gainDb),
  };
}

/** Noise and buzz out of the receiver, dB re the limiter's ceiling; there between the pulses too. */
export function outsideOf(
  input: Pick<AtTerminal, 'outsideNoiseDbm' | 'ownNoiseDbm' | 'buzzDbm'>,
  setting: Pick<Setting, 'gainDb' | 'attenuatorDb'>,
): { readonly noiseDb: number; readonly buzzDb: number } {
  const noiseDbm = addPowersDb(input.outsideNoiseDbm - setting.attenuatorDb, input.ownNoiseDbm);
  return {
    noiseDb: limitedDb(driveDb(noiseDbm, setting.gainDb)),
    buzzDb: limitedDb(driveDb(input.buzzDbm - setting.attenuatorDb, setting.gainDb)),
  };
}

/** The largest and smallest gain less attenuation that the knobs can set. */
export const NET_GAIN_RANGE_DB = { from: -30, to: FULL_GAIN_DB } as const;
