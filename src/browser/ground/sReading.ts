import { computed } from '@preact/signals';
import { lastPulse, openRun, wholeSecond } from '../currentRun';

/** Seconds that the meter holds a pulse's reading. */
const HOLD_S = 3;

/** An exercise can take the meter away. */
export const meterAllowed = computed(() => openRun.value?.exercise.scenario.aids.sMeter === true);

/** S units of the last pulse, held as a peak meter does. */
export const sUnitsNow = computed(() => {
  const heard = lastPulse.value;
  return heard && wholeSecond.value - heard.atS < HOLD_S ? heard.sUnits : 0;
});

/** 6, or 9+12 where the reading is twelve decibels over S9. */
export const sText = (units: number): string => (units > 9 ? `9+${Math.round((units - 9) * 6)}` : String(Math.round(units)));
