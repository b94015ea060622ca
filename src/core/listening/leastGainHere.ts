import { leastGainDb } from '../ear/leastGain';
import { USUAL_LISTENER } from '../ear/loudness';
import { type Air, PULSE_MS, RING_HEADINGS } from './air';

/** Strongest power that any heading takes, upright or flat, dBm. */
export const bestPowerDbm = (air: Air): number => {
  let best = Number.NEGATIVE_INFINITY;
  for (const headingDeg of RING_HEADINGS) for (const rollDeg of [0, 90]) best = Math.max(best, air.powerDbm(headingDeg, rollDeg));
  return best;
};

/** Gain less attenuation that just hears a beep here with the antenna at its best, dB; null where no setting does. */
export const leastGainHere = (air: Air, powerDbm = bestPowerDbm(air)): number | null =>
  leastGainDb(
    {
      powerDbm,
      outsideNoiseDbm: air.outsideNoiseDbm,
      ownNoiseDbm: air.ownNoiseDbm,
      buzzDbm: Number.NEGATIVE_INFINITY,
      pulseMs: PULSE_MS,
    },
    USUAL_LISTENER,
  );
