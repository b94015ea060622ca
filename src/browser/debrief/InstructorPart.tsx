import { type RunState, TICKS_PER_S } from '../../core/run/state';
import type { Scenario } from '../../core/scenario/schema';
import { clock } from '../../core/technique/habit';
import { deedsTold, deedWords } from './deedWords';

/** What an instructor did to the run, and when. */
export function InstructorPart({ state, tags }: { readonly state: RunState; readonly tags: Scenario['tags'] }) {
  return (
    <ol class="part-deeds-done">
      {deedsTold(state.interventions).map((one, i) => (
        <li key={i}>
          <span class="number">{clock(one.atTick / TICKS_PER_S)}</span> {deedWords(one, tags)}
        </li>
      ))}
    </ol>
  );
}
