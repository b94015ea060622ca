import { act, runState } from '../currentRun';
import { declare, isFixTask } from './declareNow';
import { toggleFix } from './fixNow';
import { placingPin } from './mapView';
import { placingHatch } from './ruleOutNow';

/** The three things one decides. */
export function Deeds() {
  const declarations = runState.value?.declarations ?? [];
  const last = declarations.at(-1);
  const wrong = last && !last.right && (runState.value?.tick ?? 0) - last.atTick < 160;
  return (
    <section class="deeds" aria-label="What you decide">
      <button type="button" class="primary" onClick={() => act({ type: 'mark' })}>
        Mark bearing
      </button>
      <button
        type="button"
        aria-pressed={placingPin.value}
        onClick={() => {
          placingPin.value = !placingPin.value;
          placingHatch.value = false;
        }}
      >
        {placingPin.value ? 'Tap the map' : 'Guess pin'}
      </button>
      <button type="button" onClick={isFixTask.value ? toggleFix : declare}>
        {isFixTask.value ? 'Declare fix' : wrong ? (last.otherTag === null ? 'Not here' : 'Another tag') : 'Declare find'}
      </button>
      <p class="unseen" aria-live="assertive">
        {wrong
          ? last.otherTag === null
            ? 'Not here: the tag is farther away.'
            : 'You stand at another tag, not at the one asked for.'
          : ''}
      </p>
    </section>
  );
}
