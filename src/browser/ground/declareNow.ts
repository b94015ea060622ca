import { computed } from '@preact/signals';
import { taskOf } from '../../core/run/task';
import { act, openRun } from '../currentRun';
import { fixNow, fixShown, toggleFix } from './fixNow';

/** What is declared in the end is a fix, not a find. */
export const isFixTask = computed(() => {
  const scenario = openRun.value?.exercise.scenario;
  return scenario !== undefined && taskOf(scenario).kind === 'fix';
});

/** "It is here"; where the task is a fix it is shown first, and said by the next press. */
export function declare(): void {
  if (!isFixTask.peek()) act({ type: 'declare' });
  else if (fixShown.peek()) declareFix();
  else toggleFix();
}

/** Says the fix, where the bearings give one. */
export function declareFix(): void {
  if (fixNow.peek()?.ok) act({ type: 'declareFix' });
}
