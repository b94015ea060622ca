import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { CloseMark } from '../controls/marks';
import { runState } from '../currentRun';
import { briefShown } from './panels';

/** The last thing an instructor wrote, until it is put away. It is read out where the changes are said. */
export function HintSlip() {
  const putAway = useSignal(-1);
  const interventions = runState.value?.interventions ?? [];
  const at = interventions.reduce((last, { deed }, i) => (deed.type === 'hint' ? i : last), -1);
  useEffect(() => {
    // On a phone one of the two would lie on the other: the newer is read.
    if (at >= 0) briefShown.value = false;
  }, [at]);
  const deed = interventions[at]?.deed;
  if (deed?.type !== 'hint' || at <= putAway.value) return null;
  return (
    <aside class="hint-slip" aria-label="Hint from the instructor">
      <p>
        <span class="label">From the instructor</span> {deed.text}
      </p>
      <button
        type="button"
        class="plain"
        aria-label="Put the hint away"
        onClick={() => {
          putAway.value = at;
        }}
      >
        <CloseMark />
      </button>
    </aside>
  );
}
