/**
 * Whether one pulse is heard in noise. d' grows with E/N0 and is 1 at E/N0 = 10 dB for one pulse (value from memory,
 * classical tone-in-noise detection); sqrt(n) for n pulses. Level is dB of signal over noise in 2.5 kHz.
 */

export const NOISE_BANDWIDTH_HZ = 2_500;
const DPRIME_ONE_DB = 10;
/** Standard normal deviate of 1 % false alarms. */
export const FALSE_ALARM_Z = 2.3263478740408408;
/** The same of 75 % detection. */
const HEARD_Z = 0.6744897501960817;

/** Signal over noise in 2.5 kHz at which one pulse of this length has d' = 1, dB. */
export const dPrimeOneDb = (pulseMs: number): number => DPRIME_ONE_DB - 10 * Math.log10((NOISE_BANDWIDTH_HZ * pulseMs) / 1_000);

/** d' of `pulses` pulses. */
export const dPrime = (snrDb: number, pulseMs: number, pulses = 1): number =>
  Math.sqrt(pulses) * 10 ** ((snrDb - dPrimeOneDb(pulseMs)) / 10);

/** Chance that it is heard, at 1 % false alarms. */
export const detectionChance = (snrDb: number, pulseMs: number, pulses = 1): number =>
  normalShare(dPrime(snrDb, pulseMs, pulses) - FALSE_ALARM_Z);

/** Signal over noise at which one pulse is heard three times in four, dB. */
export const heardSnrDb = (pulseMs: number): number => dPrimeOneDb(pulseMs) + 10 * Math.log10(FALSE_ALARM_Z + HEARD_Z);

/** Share of the standard normal below z. Abramowitz & Stegun 26.2.17, error below 7.5e-8. */
export function normalShare(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const tail =
    0.3989422804014327 *
    Math.exp((-z * z) / 2) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z >= 0 ? 1 - tail : tail;
}
