import { computed } from '@preact/signals';
import { isComplete, tagCheckOf } from '../../core/run/tagCheck';
import { act, checkBeeps, openRun, runState } from '../currentRun';
import { dialTag } from './pinNow';

/** The check of the tag that the dial is on; `null` where the exercise does not ask for it. */
export const checkNow = computed(() => {
  const scenario = openRun.value?.exercise.scenario;
  if (scenario?.tagCheck !== true) return null;
  return tagCheckOf(scenario, dialTag.value, checkBeeps.value, runState.value?.beats ?? []);
});
export const checkWanted = computed(() => checkNow.value !== null && !isComplete(checkNow.value));

/** What is to be done with a tag before leaving, and what is done of it. */
export function TagCheckList() {
  const check = checkNow.value;
  if (!check) return null;
  const lines = [
    ['Dial: the clearest note, faint', check.note],
    ['Heard with the antenna upright', check.upright],
    ['Heard with it flat', check.flat],
    [check.countedPerMinute === null ? 'Rate counted, five beeps or more' : `Counted ${check.countedPerMinute} a minute`, check.rate],
  ] as const;
  return (
    <section class="tag-check" aria-label="Tag check">
      <h2>Before you leave</h2>
      <ul>
        {lines.map(([words, done]) => (
          <li key={words} class={done ? 'tag-check-line done' : 'tag-check-line'}>
            <span>{words}</span>
            <span class="quiet">{done ? 'done' : 'to do'}</span>
          </li>
        ))}
      </ul>
      <button type="button" title="Y" onClick={() => act({ type: 'beat' })}>
        Press on each beep
      </button>
    </section>
  );
}
