import { computed, signal } from '@preact/signals';
import { snappedStart } from '../../core/debrief/startChoice';
import { notebookFix } from '../../core/fix/notebookFix';
import { pennedMarks } from '../../core/run/penned';
import type { MapPoint } from '../../core/units/frames';
import { act, notebook, openRun, runState } from '../currentRun';
import { briefShown, notebookShown } from './panels';

/** The fix is asked for and taken away again; while it is shown it follows the notebook. */
export const fixShown = signal(false);
/** While a start is being chosen the next tap on the map sets it. */
export const placingStart = signal(false);

export const fixAllowed = computed(() => openRun.value?.exercise.scenario.aids.fix === true);

/** From where the map has each bearing: where the walker is not shown, from where he says he stood. */
export const fixNow = computed(() => (fixShown.value && fixAllowed.value ? notebookFix(pennedMarks(notebook.value)) : null));
export const chosenStart = computed(() => runState.value?.startChoice?.at ?? null);

export function toggleFix(): void {
  if (!fixAllowed.peek()) return;
  fixShown.value = !fixShown.peek();
  placingStart.value = false;
  if (!fixShown.peek()) return;
  briefShown.value = false;
  notebookShown.value = false;
}

/** A start lies on a road or track: a tap beside one means the one it is nearest to. */
export function chooseStart(at: MapPoint | null): void {
  const { world } = openRun.peek()!.exercise;
  act({ type: 'chooseStart', at: at && snappedStart(world, at) });
  placingStart.value = false;
}

export function closeFix(): void {
  fixShown.value = false;
  placingStart.value = false;
}
