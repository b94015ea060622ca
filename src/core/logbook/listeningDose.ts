import { exposurePa2h, WEEKLY_DOSE_PA2H } from '../ear/dose';
import { USUAL_QUIET_THRESHOLD_DB } from '../ear/loudness';
import { type Book, checksIn } from './book';
import { addDays, type Day } from './day';

/**
 * Sound pressure of a beep that somebody with perfect hearing just hears: 7 dB at 1 kHz for a long tone (ISO 389-1, value from memory) and
 * 10 dB more for 20 ms (a tenfold energy to make up to 200 ms, common practice, no source).
 */
const JUST_HEARD_DB_SPL = 17;
/** Beeps fill 3 % of the time and hiss lies far under them: the mean level is at most so far under the ceiling, dB (our choice, high). */
const MEAN_UNDER_CEILING_DB = 10;

export type WeeksDose = { readonly hours: number; readonly levelDba: number; readonly share: number };

/**
 * At most what the ears had of this program in the last seven days against the weekly limit of WHO/ITU-T H.870. An estimate: it takes the
 * last hearing check for that of a perfect ear, so whoever hears less well has the volume higher than this says. `null` without a check.
 */
export function weeksDose(book: Book, today: Day): WeeksDose | null {
  const check = checksIn(book).at(-1);
  if (!check) return null;
  const from = addDays(today, -6);
  const hours = book.reduce((sum, record) => {
    if (record.day < from || record.day > today) return sum;
    return sum + (record.kind === 'session' ? record.seconds / 3_600 : record.kind === 'run' ? record.minutes / 60 : 0);
  }, 0);
  const ceilingDb = JUST_HEARD_DB_SPL - (USUAL_QUIET_THRESHOLD_DB + check.thresholdDb);
  const levelDba = ceilingDb - MEAN_UNDER_CEILING_DB;
  return { hours, levelDba, share: exposurePa2h(levelDba, hours) / WEEKLY_DOSE_PA2H };
}
