import { antennaById } from '../../core/antenna/catalogue';
import { isAtVehicle } from '../../core/run/vehicle';
import { distanceM } from '../../core/units/frames';
import { act, runState } from '../currentRun';
import { placeShown, placingMe } from './beliefNow';
import { placingPin } from './mapView';
import { lengthText } from './measures';

/** The row over the walk's for kinds of exercise that need one. */
export function KindControls() {
  const hasVehicle = (runState.value?.vehicle ?? null) !== null;
  if (placeShown.value && !hasVehicle) return null;
  return (
    <div class="kind-row">
      {!placeShown.value && <OwnPlace />}
      {hasVehicle && <VehicleDoor />}
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
