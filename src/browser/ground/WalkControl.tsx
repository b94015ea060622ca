import { TICKS_PER_S } from '../../core/run/state';
import { act, holdNow, legsNow, live, openRun, runState } from '../currentRun';
import { paceText } from './measures';
import { changePace, chosenPace, paces } from './pace';
import { bearingText, blockedWords } from './words';

/** What keeps the hands busy. */
const BUSY: readonly string[] = ['changeAntenna', 'climb', 'comeDown'];

/** Walk where the antenna points, or stop. A tap on the map walks there. */
export function WalkControl() {
  const legs = legsNow.value;
  const walking = (legs?.paceMPerS ?? 0) > 0;
  const busyS = Math.ceil(((runState.value?.busyUntilTick ?? 0) - (runState.value?.tick ?? 0)) / TICKS_PER_S);
  const aboard = runState.value?.vehicle?.aboard === true;
  const climbs = busyS > 0 && live.value?.log.filter(({ action }) => BUSY.includes(action.type)).at(-1)?.action.type !== 'changeAntenna';
  const compass = openRun.value?.exercise.scenario.aids.compass;
  const [pace, unit] = paceText(chosenPace.value.mPerS);
  return (
    <div class="walk">
      <button type="button" class={walking ? 'walk-go walking' : 'walk-go'} onClick={walkOrStop}>
        {walking ? 'Stop' : aboard ? 'Drive ahead' : 'Walk ahead'}
        {walking && compass && <span class="number walk-course">{bearingText(legs!.courseDeg)}</span>}
      </button>
      {paces.value.length > 1 && !aboard && (
        <button
          type="button"
          class="walk-pace"
          aria-label={`Pace: ${chosenPace.value.name}. Change it`}
          onClick={() => {
            changePace(1, true);
            keepWalking();
          }}
        >
          <span class="number">{pace}</span>
          <span class="unit">{unit}</span>
        </button>
      )}
      {busyS > 0 && (
        <span class="walk-blocked">
          {climbs ? 'climbing' : 'changing the antenna'}, {busyS} s
        </span>
      )}
      {runState.value?.blocked && <span class="walk-blocked">{blockedWords(runState.value)}</span>}
    </div>
  );
}

export function walkOrStop(): void {
  const walking = (legsNow.peek()?.paceMPerS ?? 0) > 0;
  act({ type: 'walk', courseDeg: holdNow.peek()?.headingDeg ?? 0, paceMPerS: walking ? 0 : chosenPace.peek().mPerS });
}

/** Goes on in the same way at the pace that is chosen now. */
export function keepWalking(): void {
  const legs = legsNow.peek();
  if (!legs || legs.paceMPerS === 0) return;
  const paceMPerS = chosenPace.peek().mPerS;
  act(legs.until ? { type: 'walkTo', at: legs.until, paceMPerS } : { type: 'walk', courseDeg: legs.courseDeg, paceMPerS });
}
