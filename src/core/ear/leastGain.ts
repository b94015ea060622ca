import { driveDb, limitedDb } from '../receiver/limiter';
import { NET_GAIN_RANGE_DB, outsideOf } from '../receiver/receive';
import { addPowersDb } from '../units/decibels';
import { type Listener, thresholdDb } from './loudness';

/** The strongest pulse and the noise at a place: antenna on its best heading and roll, dial on the clearest note. */
export type BestAtPlace = {
  readonly powerDbm: number;
  readonly outsideNoiseDbm: number;
  readonly ownNoiseDbm: number;
  readonly buzzDbm: number;
  readonly pulseMs: number;
};

const STEPS_DB = [0, 10, 20, 30] as const;

/**
 * The smallest gain less attenuation at which one pulse is heard three times in four, dB, to 0.01 dB.
 * Negative where the attenuator is needed; `null` where no setting does it.
 */
export function leastGainDb(best: BestAtPlace, listener: Listener): number | null {
  let least: number | null = null;
  for (const attenuatorDb of STEPS_DB) {
    const gainDb = leastGainWith(best, attenuatorDb, listener);
    if (gainDb !== null && (least === null || gainDb - attenuatorDb < least)) least = gainDb - attenuatorDb;
  }
  return least;
}

/** Is a pulse at least just heard at this setting? Rises with gain until noise and limiter meet it. */
function over(best: BestAtPlace, gainDb: number, attenuatorDb: number, listener: Listener): number {
  const { noiseDb, buzzDb } = outsideOf(best, { gainDb, attenuatorDb });
  const levelDb = limitedDb(driveDb(best.powerDbm - attenuatorDb, gainDb));
  return levelDb - thresholdDb(addPowersDb(noiseDb, buzzDb - 3), listener, best.pulseMs);
}

function leastGainWith(best: BestAtPlace, attenuatorDb: number, listener: Listener): number | null {
  if (over(best, 0, attenuatorDb, listener) >= 0) return 0;
  let low = 0;
  let high: number | null = null;
  // Audibility rises, then may fall where the limiter squeezes signal and noise together: look upward in steps first.
  for (let gainDb = 2; gainDb <= NET_GAIN_RANGE_DB.to; gainDb += 2) {
    if (over(best, gainDb, attenuatorDb, listener) >= 0) {
      high = gainDb;
      break;
    }
    low = gainDb;
  }
  if (high === null) return null;
  while (high - low > 0.005) {
    const middle: number = (low + high) / 2;
    if (over(best, middle, attenuatorDb, listener) >= 0) high = middle;
    else low = middle;
  }
  return Math.round(high * 100) / 100;
}
