/** A tag of this strength is what the rule was made for: 10 mW. */
const RULE_EIRP_DBM = 10;
/** Nearer than this the last stretch begins: signals are strong everywhere, habits of finding a way no longer apply. */
export const LAST_STRETCH_M = 100;

/**
 * A rule of thumb, not a measurement: the distance that a least gain suggests for a tag in view, metres. Plane earth takes 12 dB
 * for each doubling; a 10 mW tag at 0.5 m, 150 MHz, gives -84 dBm at 800 m, about 15 dB of least gain (computed independently for
 * this project). Ridges and woods make a tag seem farther, a lying whip too; hardly anything makes it seem nearer.
 */
export const distanceFromLeastGainM = (leastGainDb: number, eirpDbm = RULE_EIRP_DBM): number =>
  800 * 2 ** ((leastGainDb - 15 + eirpDbm - RULE_EIRP_DBM) / 12);
