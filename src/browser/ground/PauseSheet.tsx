import { useEffect, useRef } from 'preact/hooks';
import type { Scenario } from '../../core/scenario/schema';
import { CAUTION_WORDS } from '../cautionWords';
import { act, heldUp, openRun, paused, runState, taskText, textCame } from '../currentRun';
import { SoundLossLine } from '../sound/SoundLossLine';
import { unlockSound } from '../sound/unlock';
import { PauseRest } from './PauseRest';
import { TaskLine } from './TaskLine';

/** What is seen while the run rests: the task again, the cautions, settings, keys. The map stays behind it. */
export function PauseSheet({ onLeave }: { readonly onLeave: () => void }) {
  const goOn = useRef<HTMLButtonElement>(null);
  useEffect(() => goOn.current?.focus(), []);
  const scenario = openRun.value?.exercise.scenario;
  if (!scenario) return null;
  const begun = (runState.value?.tick ?? 0) > 0;
  const held = heldUp.value;
  const title = held ? 'The instructor has stopped the run' : textCame.value ? stageTitle(scenario) : begun ? 'Paused' : scenario.title;
  return (
    <div class="sheet" role="dialog" aria-modal="true" aria-label={title} aria-describedby="sheet-brief">
      <div class="sheet-inner">
        <h2 class="sheet-title">{title}</h2>
        {held && <p role="status">It goes on when the instructor says so, at the very moment where it was stopped.</p>}
        <p class="sheet-brief" id="sheet-brief">
          {taskText.value}
        </p>
        <TaskLine />
        <SoundLossLine />
        <div class="sheet-deeds">
          {!held && (
            <button
              ref={goOn}
              type="button"
              class="primary"
              onClick={() => {
                unlockSound();
                paused.value = false;
              }}
            >
              {begun ? 'Go on' : 'Begin'}
            </button>
          )}
          {begun && !held && (
            <button
              type="button"
              onClick={() => {
                act({ type: 'giveUp' });
                paused.value = false;
              }}
            >
              Give up and see the debrief
            </button>
          )}
          <button type="button" class="plain" onClick={onLeave}>
            {begun ? 'Leave, go on later' : 'Back to the start page'}
          </button>
        </div>
        {scenario.cautions.length > 0 && (
          <section>
            <h3>Outdoors, mind</h3>
            <ul class="sheet-cautions">
              {scenario.cautions.map((caution) => (
                <li key={caution}>{CAUTION_WORDS[caution]}</li>
              ))}
            </ul>
          </section>
        )}
        <PauseRest />
      </div>
    </div>
  );
}

/** How far one has come among the texts; the brief was the first. */
function stageTitle({ stages = [] }: Pick<Scenario, 'stages'>): string {
  const come = runState.value?.stages.length ?? 0;
  return `Part ${come + 1} of ${stages.length + 1}`;
}
