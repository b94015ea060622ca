/** Decibels of power. Losses are positive dB; levels are dBm at the antenna terminals. */

/** Power ratio of `db` decibels. */
export const toPowerRatio = (db: number): number => 10 ** (db / 10);

/** Decibels of a power ratio; -Infinity for 0. */
export const toDb = (powerRatio: number): number => 10 * Math.log10(powerRatio);

/** Power sum of two levels in dB re the same reference. */
export function addPowersDb(aDb: number, bDb: number): number {
  const topDb = Math.max(aDb, bDb);
  if (topDb === -Infinity) return topDb;
  return topDb + 10 * Math.log10(toPowerRatio(aDb - topDb) + toPowerRatio(bDb - topDb));
}
