import { antennaById } from '../antenna/catalogue';
import { makeReceivingAntenna } from '../antenna/orientation';
import { loudnessDb } from '../ear/hear';
import { type Listener, thresholdDb, USUAL_LISTENER } from '../ear/loudness';
import { galacticNoiseDb, manMadeNoiseDb, thermalNoiseDbm } from '../radio/noise';
import type { Wave } from '../radio/wave';
import { SPACE_IMPEDANCE_OHM, wavelengthM } from '../radio/wavelength';
import { fieldSquared } from '../radio/waveVector';
import { type AtTerminal, type Received, receive } from '../receiver/receive';
import { clearestDialMHz } from '../receiver/tuning';
import type { AntennaId, NoiseClassId } from '../scenario/schema';
import { toDb, toPowerRatio } from '../units/decibels';
import type { Settings } from './settings';

/** All tags of the room send on this carrier unless a demonstration lets it drift, MHz. */
export const TAG_MHZ = 150.1;
export const DESIGN_MHZ = 150;
export const PULSE_MS = 20;
/** The ring is worked out at every so many degrees. */
export const RING_STEP_DEG = 3;
export const RING_HEADINGS: readonly number[] = Array.from({ length: 360 / RING_STEP_DEG }, (_, i) => i * RING_STEP_DEG);

const NOISE_FIGURE_DB = 4;
const BANDWIDTH_HZ = 2_500;

/** What is in the air where the listener stands, and how much of it an antenna takes. */
export type Air = {
  readonly waves: readonly Wave[];
  /** Power at the antenna terminal by heading and roll, dBm; -Infinity with the antenna off. */
  readonly powerDbm: (headingDeg: number, rollDeg: number) => number;
  readonly isotropicDbm: number;
  readonly carrierMHz: number;
  readonly outsideNoiseDbm: number;
  readonly ownNoiseDbm: number;
};

export type AirInput = {
  readonly waves: readonly Wave[];
  readonly eirpDbm: number;
  readonly antenna?: AntennaId | 'off';
  readonly noise?: NoiseClassId;
  /** How far the tag's crystal has moved, Hz. */
  readonly driftHz?: number;
};

/** Power in a matched isotropic antenna for |E|² in (V/m)², dBm for 1 W e.i.r.p.: |E|² lambda² / (4 pi 120 pi). */
const isotropicDb = (squared: number): number => toDb((squared * wavelengthM(TAG_MHZ) ** 2) / (4 * Math.PI * SPACE_IMPEDANCE_OHM));

const receiving = (id: AntennaId) => makeReceivingAntenna(antennaById(id).pattern(TAG_MHZ, DESIGN_MHZ));

export function makeAir({ waves, eirpDbm, antenna = 'yagi3', noise = 'rural', driftHz = 0 }: AirInput): Air {
  const fan = antenna === 'off' ? null : receiving(antenna).fan(waves);
  const kept = new Map<string, number>();
  const thermal = thermalNoiseDbm(BANDWIDTH_HZ);
  return {
    waves,
    powerDbm(headingDeg, rollDeg) {
      const key = `${headingDeg}/${rollDeg}`;
      const known = kept.get(key);
      if (known !== undefined) return known;
      const made = fan ? eirpDbm + isotropicDb(fan(headingDeg, rollDeg)) : Number.NEGATIVE_INFINITY;
      kept.set(key, made);
      return made;
    },
    isotropicDbm: eirpDbm + isotropicDb(waves.reduce((sum, wave) => sum + fieldSquared(wave), 0)),
    carrierMHz: TAG_MHZ + driftHz / 1e6,
    outsideNoiseDbm: thermal + toDb(toPowerRatio(manMadeNoiseDb(noise, TAG_MHZ)) + toPowerRatio(galacticNoiseDb(TAG_MHZ))),
    ownNoiseDbm: thermal + toDb(toPowerRatio(NOISE_FIGURE_DB) - 1),
  };
}

/** One beep as it is heard. */
export type Heard = Received & {
  readonly headingDeg: number;
  /** Above the listener's threshold, dB; heard from 0 up. */
  readonly loudnessDb: number;
  /** Level of a beep that is just heard in the present noise, dB re the limiter's ceiling. */
  readonly thresholdDb: number;
  /** Heard three times in four or more. */
  readonly audible: boolean;
};

const terminal = (air: Air, headingDeg: number, rollDeg: number): AtTerminal => ({
  powerDbm: air.powerDbm(headingDeg, rollDeg),
  isotropicDbm: air.isotropicDbm,
  tagMHz: air.carrierMHz,
  outsideNoiseDbm: air.outsideNoiseDbm,
  ownNoiseDbm: air.ownNoiseDbm,
  buzzDbm: Number.NEGATIVE_INFINITY,
});

/** The beep with the antenna on a heading, through the receiver as it is set, to the ear. */
export function heardAt(air: Air, settings: Settings, headingDeg: number, listener: Listener = USUAL_LISTENER): Heard {
  const { gainDb, attenuatorDb, offsetHz, rollDeg } = settings;
  // A dial turned up comes nearer to the carrier: the note falls.
  const tunedMHz = clearestDialMHz(TAG_MHZ) - offsetHz / 1e6;
  const received = receive(terminal(air, headingDeg, rollDeg), { gainDb, attenuatorDb, tunedMHz });
  const overDb = loudnessDb(received, PULSE_MS, listener);
  return {
    ...received,
    headingDeg,
    loudnessDb: overDb,
    thresholdDb: thresholdDb(received.noiseDb, listener, PULSE_MS),
    audible: overDb >= 0,
  };
}

/** The whole turn. */
export const heardRound = (air: Air, settings: Settings, listener: Listener = USUAL_LISTENER): readonly Heard[] =>
  RING_HEADINGS.map((headingDeg) => heardAt(air, settings, headingDeg, listener));
