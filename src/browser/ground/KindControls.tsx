import { computed } from '@preact/signals';
import { antennaById } from '../../core/antenna/catalogue';
import { climbableM, isAloft } from '../../core/run/climbing';
import { isAtVehicle } from '../../core/run/vehicle';
import { distanceM } from '../../core/units/frames';
import { CAUTION_WORDS } from '../cautionWords';
import { act, openRun, runState } from '../currentRun';
import { placeShown, placingMe } from './beliefNow';
import { placingPin } from './mapView';
import { lengthText } from './measures';

/** The row over the walk's for kinds of exercise that need one. */
export function KindControls() {
  const hasVehicle = (runState.value?.vehicle ?? null) !== null;
  const roof = roofNow.value;
  if (placeShown.value && !hasVehicle && roof === null) return null;
  return (
    <div class="kind-row">
      {!placeShown.value && <OwnPlace />}
      {roof !== null && <Roof heightM={roof} />}
      {hasVehicle && <VehicleDoor />}
    </div>
  );
}

/** Height of what may be climbed here, or of what was climbed; `null` elsewhere. */
const roofNow = computed<number | null>(() => {
  const [state, scenario] = [runState.value, openRun.value?.exercise.scenario];
  if (!state || !scenario || state.vehicle?.aboard) return null;
  return state.hold.aloftM ?? climbableM(scenario, state.at);
});

export const upOrDown = (): void => act({ type: runState.peek() && isAloft(runState.peek()!) ? 'comeDown' : 'climb' });

function Roof({ heightM }: { readonly heightM: number }) {
  const aloft = runState.value !== null && isAloft(runState.value);
  const [height, unit] = lengthText(heightM);
  return (
    <>
      <button type="button" title="2" onClick={upOrDown}>
        {aloft ? 'Come down' : 'Climb'} <span class="number">{height}</span> {unit}
      </button>
      <span class="kind-note">{aloft ? 'Up here the antenna is higher, and nobody walks.' : CAUTION_WORDS.heights}</span>
    </>
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

export const inOrOut = (): void => act({ type: runState.peek()?.vehicle?.aboard ? 'leave' : 'board' });

/** In or out beside it; elsewhere how far off it stands, where the map tells as much. */
function VehicleDoor() {
  const state = runState.value!;
  const vehicle = state.vehicle!;
  if (vehicle.aboard || isAtVehicle(state))
    return (
      <>
        <button type="button" title="1" aria-label={vehicle.aboard ? 'Get out of the vehicle' : 'Get into the vehicle'} onClick={inOrOut}>
          {vehicle.aboard ? 'Get out' : 'Get in'}
        </button>
        {!vehicle.aboard && !antennaById(state.hold.antenna).onFoot && (
          <span class="kind-note">This antenna stays here. To walk, pause and take another.</span>
        )}
      </>
    );
  if (!placeShown.value) return <span class="kind-note">the vehicle is not within reach</span>;
  const [away, unit] = lengthText(distanceM(state.at, vehicle.at));
  return (
    <span class="kind-note">
      vehicle <span class="number">{away}</span> {unit} off
    </span>
  );
}
