/** A day of the calendar where the learner is, as `2031-05-09`. The shell says which one it is; here they are only counted. */
export type Day = string;

export const DAY_PATTERN = /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/;
const MS_A_DAY = 86_400_000;

/** Days since 1 January 1970. */
export function dayNumber(day: Day): number {
  const [year, month, date] = day.split('-').map(Number);
  return Math.round(Date.UTC(year!, month! - 1, date!) / MS_A_DAY);
}

/** The day with a number: Howard Hinnant's civil_from_days, public domain algorithm. */
export function dayOf(number: number): Day {
  const shifted = number + 719_468;
  const era = Math.floor(shifted / 146_097);
  const ofEra = shifted - era * 146_097;
  const yearOfEra = Math.floor((ofEra - Math.floor(ofEra / 1_460) + Math.floor(ofEra / 36_524) - Math.floor(ofEra / 146_096)) / 365);
  const ofYear = ofEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const fromMarch = Math.floor((5 * ofYear + 2) / 153);
  const date = ofYear - Math.floor((153 * fromMarch + 2) / 5) + 1;
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9;
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(date).padStart(2, '0')}`;
}

export const daysBetween = (from: Day, to: Day): number => dayNumber(to) - dayNumber(from);
export const addDays = (day: Day, days: number): Day => dayOf(dayNumber(day) + days);
/** Middle of a day as milliseconds since 1970, universal time: no clock change moves it into another day. */
export const noonMs = (day: Day): number => dayNumber(day) * MS_A_DAY + MS_A_DAY / 2;
export const dayOfMs = (ms: number): Day => dayOf(Math.floor(ms / MS_A_DAY));
