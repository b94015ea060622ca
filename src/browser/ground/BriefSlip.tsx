import { CAUTION_WORDS } from '../cautionWords';
import { CloseMark } from '../controls/marks';
import { openRun, taskText } from '../currentRun';
import { briefShown } from './panels';
import { TaskLine } from './TaskLine';

/** The task and its cautions on a slip at the map's side, until it is put away. */
export function BriefSlip() {
  const scenario = openRun.value?.exercise.scenario;
  if (!scenario || !briefShown.value) return null;
  return (
    <aside class="slip brief-slip" aria-label="Task">
      <button
        type="button"
        class="plain slip-close"
        aria-label="Put the task away"
        onClick={() => {
          briefShown.value = false;
        }}
      >
        <CloseMark />
      </button>
      <h2>{scenario.title}</h2>
      <p>{taskText.value}</p>
      <TaskLine />
      {scenario.cautions.length > 0 && (
        <details>
          <summary>Cautions for outdoors</summary>
          <ul>
            {scenario.cautions.map((caution) => (
              <li key={caution}>{CAUTION_WORDS[caution]}</li>
            ))}
          </ul>
        </details>
      )}
    </aside>
  );
}
