import { detectionChance, heardSnrDb } from '../ear/detection';
import { innerNoiseDb, USUAL_QUIET_THRESHOLD_DB } from '../ear/loudness';

/** A row of beeps as they were given: level re the limiter's ceiling, or `null` for silence, and whether the person said that they were there. */
export type Given = { readonly levelDb: number | null; readonly heard: boolean };

/** Rows of a check, three of them silent: about half a minute. */
export const ROWS = 16;
const SILENT_ROWS = [4, 8, 12] as const;
/** Beeps a row, and their length: as a tag gives them. */
export const BEEPS_A_ROW = 3;
export const BEEP_MS = 20;

/** Thresholds that are possible, dB over the usual one: as a run file takes them. */
const RANGE_DB = { from: -40, to: 40 } as const;
/** What is thought before the first row: people and headphones differ by about so much (our choice). */
const PRIOR_SD_DB = 15;
/** The first row is plainly there, so that one knows what to listen for. */
const FIRST_OVER_DB = 22;
const LAPSE = 0.05;
const FALSE_ALARM = 0.03;

/** Chance that somebody with this threshold says yes to a row at this level in quiet. */
function yesChance(levelDb: number, thresholdDb: number): number {
  const snrDb = levelDb - innerNoiseDb({ thresholdDb }, BEEP_MS);
  return FALSE_ALARM + (1 - FALSE_ALARM - LAPSE) * detectionChance(snrDb, BEEP_MS, BEEPS_A_ROW);
}

/** Threshold as far as the answers tell: mean and spread, dB over (+) or under (-) the usual one. */
export function thresholdFrom(given: readonly Given[]): { readonly thresholdDb: number; readonly sdDb: number } {
  let [sum, mean, square] = [0, 0, 0];
  for (let at: number = RANGE_DB.from; at <= RANGE_DB.to; at += 0.5) {
    let log = -((at / PRIOR_SD_DB) ** 2) / 2;
    for (const { levelDb, heard } of given) {
      if (levelDb === null) continue;
      const yes = yesChance(levelDb, at);
      log += Math.log(heard ? yes : 1 - yes);
    }
    const weight = Math.exp(log);
    [sum, mean, square] = [sum + weight, mean + weight * at, square + weight * at * at];
  }
  const thresholdDb = mean / sum;
  return { thresholdDb, sdDb: Math.sqrt(Math.max(0, square / sum - thresholdDb ** 2)) };
}

/** Three beeps are heard at a little less than one: where three are heard three times in four, dB re one. */
const ROW_GAIN_DB = 5 * Math.log10(BEEPS_A_ROW);

/** Level of the next row, dB re the ceiling, `null` for silence: at the threshold as it seems so far, where an answer says most. */
export function nextLevelDb(given: readonly Given[]): number | null {
  if ((SILENT_ROWS as readonly number[]).includes(given.length)) return null;
  const { thresholdDb } = thresholdFrom(given);
  const levelDb = USUAL_QUIET_THRESHOLD_DB + thresholdDb + (given.length === 0 ? FIRST_OVER_DB : -ROW_GAIN_DB);
  return Math.min(-6, Math.round(levelDb * 10) / 10);
}

export const isChecked = (given: readonly Given[]): boolean => given.length >= ROWS;

/** What a finished check is worth. */
export type CheckVerdict = 'sound' | 'guessed' | 'not heard';

/** Two of the three silent rows heard is guessing; a threshold at the end of the range means that nothing comes out of the loudspeaker. */
export function verdictOf(given: readonly Given[]): CheckVerdict {
  const falseAlarms = given.filter(({ levelDb, heard }) => levelDb === null && heard).length;
  if (falseAlarms >= 2) return 'guessed';
  return given.some(({ levelDb, heard }) => levelDb !== null && heard) && thresholdFrom(given).thresholdDb < RANGE_DB.to - 8
    ? 'sound'
    : 'not heard';
}

/** Level at which one beep in quiet is just heard by somebody with a threshold, dB re the ceiling. */
export const quietLevelDb = (thresholdDb: number): number => innerNoiseDb({ thresholdDb }, BEEP_MS) + heardSnrDb(BEEP_MS);
