import { computed, signal } from '@preact/signals';
import type { MapPoint } from '../../core/units/frames';
import { act, openRun, runState } from '../currentRun';

/** While the own place is being set the next tap on the map sets it. */
export const placingMe = signal(false);

/** The map shows where one stands. */
export const placeShown = computed(() => openRun.value?.exercise.scenario.aids.ownPosition !== false);

/** Where the map has the walker: shown, or as he says himself. */
export const hereOnMap = computed<MapPoint | null>(() => {
  const state = runState.value;
  return state && (placeShown.value ? state.at : (state.belief?.at ?? null));
});

export function sayIAmHere(at: MapPoint): void {
  act({ type: 'believe', at: { eM: Math.round(at.eM), nM: Math.round(at.nM) } });
  placingMe.value = false;
}
