import { wrapBearingDeg } from '../../core/units/angles';
import { settings } from '../storage/settings';

/** What a learner reads bearings and lengths in. The run's log stays in degrees true and metres. */

const M_PER_YARD = 0.9144; // exact, international yard of 1959
const YARDS_PER_MILE = 1_760;

/** A bearing as it is read: from magnetic north it is the true one less the declination, east positive. */
export function readDeg(trueDeg: number): number {
  const { north, declinationDeg } = settings.value;
  return north === 'magnetic' ? wrapBearingDeg(trueDeg - declinationDeg) : trueDeg;
}

/** What stands behind a bearing's number. */
export const northWord = (): string => (settings.value.north === 'magnetic' ? 'magnetic' : 'true');

/** A length as number and unit: 340 m, 1.20 km, 372 yd, 1.05 mi. */
export function lengthText(m: number): readonly [string, string] {
  if (settings.value.lengths === 'metres') return m < 1_000 ? [String(Math.round(m)), 'm'] : [(m / 1_000).toFixed(2), 'km'];
  const yards = m / M_PER_YARD;
  return yards < YARDS_PER_MILE ? [String(Math.round(yards)), 'yd'] : [(yards / YARDS_PER_MILE).toFixed(2), 'mi'];
}

/** The same as it is said. */
export function lengthSaid(m: number): string {
  const [value, unit] = lengthText(m);
  return `${value} ${{ m: 'metres', km: 'kilometres', yd: 'yards', mi: 'miles' }[unit]}`;
}

/** A pace as number and unit. */
export const paceText = (mPerS: number): readonly [string, string] =>
  settings.value.lengths === 'metres' ? [mPerS.toFixed(1), 'm/s'] : [(mPerS / M_PER_YARD).toFixed(1), 'yd/s'];

const ROUND_M = [10, 20, 50, 100, 200, 500, 1_000, 2_000];
const ROUND_YARDS = [10, 20, 50, 100, 200, 500, 880, 1_760, 3_520];

/** The longest round length that is no longer than `mostM`, with its words: what a map's scale shows. */
export function scaleLength(mostM: number): { readonly m: number; readonly text: string } {
  if (settings.value.lengths === 'metres') {
    const m = ROUND_M.filter((one) => one <= mostM).at(-1) ?? ROUND_M[0]!;
    return { m, text: m < 1_000 ? `${m} m` : `${m / 1_000} km` };
  }
  const yards = ROUND_YARDS.filter((one) => one * M_PER_YARD <= mostM).at(-1) ?? ROUND_YARDS[0]!;
  return { m: yards * M_PER_YARD, text: yards < 880 ? `${yards} yd` : `${yards / YARDS_PER_MILE} mi` };
}
