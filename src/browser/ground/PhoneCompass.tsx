import { useEffect, useMemo } from 'preact/hooks';
import { act, holdNow } from '../currentRun';
import { COMPASS_WORDS, deviceCompass, mayHaveCompass } from '../input/deviceCompass';

/** The phone as the antenna, where there is a compass in it. */
export function PhoneCompass() {
  const compass = useMemo(
    () =>
      deviceCompass(
        () => holdNow.peek()?.headingDeg ?? 0,
        (toDeg) => act({ type: 'turn', toDeg }),
      ),
    [],
  );
  useEffect(() => compass.leave, []);
  if (!mayHaveCompass()) return null;
  const state = compass.state.value;
  const words = COMPASS_WORDS[state];
  return (
    <div class="phone-compass">
      {words && (
        <p class="phone-compass-words" role="status">
          {words}
        </p>
      )}
      <div class="phone-compass-buttons">
        <button
          type="button"
          aria-pressed={state === 'on'}
          aria-label="Turn the antenna with the phone"
          onClick={() => void compass.toggle()}
        >
          Compass
        </button>
        {state === 'on' && (
          <button type="button" aria-label="The phone points to the map’s north now" onClick={compass.callNorth}>
            This is north
          </button>
        )}
      </div>
    </div>
  );
}
