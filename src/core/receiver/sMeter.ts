import { FULL_GAIN_DB } from './limiter';

/** S9 above 30 MHz: -93 dBm, 5 microvolts in 50 ohm. Source: IARU Region 1 recommendation R.1. */
export const S9_DBM = -93;
const DB_PER_UNIT = 6;
/** The needle's end stop. */
const PINNED_AT = 9 + 20 / DB_PER_UNIT;

/** What the meter shows for a power in the passband: it sits after gain and attenuator, so it needs gain discipline too. */
export function sUnits(powerDbm: number, netGainDb: number): number {
  const units = 9 + (powerDbm + (netGainDb - FULL_GAIN_DB) - S9_DBM) / DB_PER_UNIT;
  return Math.min(PINNED_AT, Math.max(0, units));
}
