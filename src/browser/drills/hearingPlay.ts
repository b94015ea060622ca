import { signal } from '@preact/signals';
import {
  BEEP_MS,
  BEEPS_A_ROW,
  type CheckVerdict,
  type Given,
  isChecked,
  nextLevelDb,
  thresholdFrom,
  verdictOf,
} from '../../core/drills/hearingCheck';
import { CLEAREST_NOTE_HZ } from '../../core/receiver/tuning';
import { outputDevice } from '../listenerHere';
import { type Beeper, makeBeeper } from '../sound/beeper';
import { askToPersist, entryNow, keepInBook } from '../storage/book';
import { settings } from '../storage/settings';

const PERIOD_S = 0.45;
/** Silence before each row, so that it is not taken for the end of the last one, beats. */
const PAUSE_BEATS = 1;
const NO_NOISE_DB = -999;

export type CheckStage = 'waiting' | 'rows' | 'ended';
export const checkStage = signal<CheckStage>('waiting');
export const givenRows = signal<readonly Given[]>([]);
/** The row has been given whole: "no" may be said. */
export const rowOver = signal(false);
export const checkResult = signal<{ readonly verdict: CheckVerdict; readonly thresholdDb: number } | null>(null);

let beats = 0;
let levelDb: number | null = null;
let beeper: Beeper | null = null;

/** Opens the loudspeaker for a check. @returns lets go of it */
export function openCheckSound(): () => void {
  checkStage.value = 'waiting';
  const made = makeBeeper({
    periodS: PERIOD_S,
    pulseMs: BEEP_MS,
    heard: () => ({ pitchHz: CLEAREST_NOTE_HZ, levelDb: levelDb ?? NO_NOISE_DB, noiseDb: NO_NOISE_DB, silentBeep: !soundsNow() }),
    onBeat: () => {
      if (checkStage.peek() !== 'rows') return;
      beats++;
      rowOver.value = beats > PAUSE_BEATS + BEEPS_A_ROW;
    },
  });
  beeper = made;
  const stopVolume = settings.subscribe(({ volumeDb, muted }) => made.volume(volumeDb, muted));
  return () => {
    stopVolume();
    made.close();
    beeper = null;
  };
}

const soundsNow = (): boolean =>
  checkStage.peek() === 'rows' && levelDb !== null && beats > PAUSE_BEATS && beats <= PAUSE_BEATS + BEEPS_A_ROW;

/** The gesture from which on it sounds. */
export function beginCheck(): void {
  beeper?.start();
  givenRows.value = [];
  checkResult.value = null;
  checkStage.value = 'rows';
  nextRow();
}

function nextRow(): void {
  levelDb = nextLevelDb(givenRows.peek());
  beats = 0;
  rowOver.value = false;
}

/** Yes may be said as soon as it is heard; no only when the whole row was given. */
export function answerRow(heard: boolean): void {
  if (checkStage.peek() !== 'rows' || beats <= PAUSE_BEATS || (!heard && !rowOver.peek())) return;
  givenRows.value = [...givenRows.peek(), { levelDb, heard }];
  if (isChecked(givenRows.peek())) void endCheck();
  else nextRow();
}

async function endCheck(): Promise<void> {
  const given = givenRows.peek();
  const verdict = verdictOf(given);
  const thresholdDb = Math.round(10 * Math.min(40, Math.max(-40, thresholdFrom(given).thresholdDb))) / 10;
  if (verdict === 'sound') {
    const device = await outputDevice();
    await keepInBook([{ ...entryNow(), kind: 'check', device, volumeDb: settings.peek().volumeDb, thresholdDb }]);
    void askToPersist();
  }
  checkResult.value = { verdict, thresholdDb };
  checkStage.value = 'ended';
}
