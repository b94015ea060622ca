import { runState } from '../currentRun';
import { placeShown, placingMe } from './beliefNow';
import { placingPin } from './mapView';
import { lengthText } from './measures';

/** The row under the map's middle for kinds of exercise that need one. */
export function KindControls() {
  if (placeShown.value) return null;
  return (
    <div class="kind-row">
      <OwnPlace />
    </div>
  );
}

/** The map shows nobody: one says oneself where one is, and counts from there. */
function OwnPlace() {
  const state = runState.value;
  const [walked, unit] = lengthText(Math.max(0, (state?.walkedM ?? 0) - (state?.belief?.walkedM ?? 0)));
  return (
    <>
      <button
        type="button"
        aria-pressed={placingMe.value}
        title="O"
        onClick={() => {
          placingMe.value = !placingMe.value;
          placingPin.value = false;
        }}
      >
        {placingMe.value ? 'Tap the map' : 'I am here'}
      </button>
      <span class="kind-note">
        walked since <span class="number">{walked}</span> {unit}
      </span>
    </>
  );
}
