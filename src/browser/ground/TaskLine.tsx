import { openRun } from '../currentRun';
import { taskWords } from '../taskWords';

/** What is asked for, where it is more than to find a tag. */
export function TaskLine() {
  const scenario = openRun.value?.exercise.scenario;
  const words = scenario ? taskWords(scenario) : '';
  return words === '' ? null : <p class="task-line">{words}</p>;
}
