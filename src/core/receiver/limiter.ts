/**
 * The receiver's soft limiter: everything that comes out stays under a ceiling, so with too much gain the front and the
 * back of the antenna sound alike. Levels in dB relative to the ceiling.
 */

/** Input power that just reaches the ceiling at full gain, dBm: 30 dB above the receiver's noise of about -134 dBm. */
export const CEILING_INPUT_DBM = -104;
export const FULL_GAIN_DB = 90;

/** Level out of the limiter for a level `inDb` before it: out = -10 log10(1 + 10^(-in/10)). */
export const limitedDb = (inDb: number): number => (inDb < -200 ? inDb : -10 * Math.log10(1 + 10 ** (-inDb / 10)));

/** Level before the limiter, dB re its ceiling, of an input power with a gain less attenuation. */
export const driveDb = (powerDbm: number, netGainDb: number): number => powerDbm + (netGainDb - FULL_GAIN_DB) - CEILING_INPUT_DBM;
