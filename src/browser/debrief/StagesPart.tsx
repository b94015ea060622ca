import { onFootM, type RunState, TICKS_PER_S } from '../../core/run/state';
import type { Scenario } from '../../core/scenario/schema';
import { clock } from '../../core/technique/habit';

/** The parts of the exercise, and how long each took: in time and on foot. */
export function StagesPart({ scenario, end }: { readonly scenario: Pick<Scenario, 'brief' | 'stages'>; readonly end: RunState }) {
  const texts = [scenario.brief, ...(scenario.stages ?? []).map(({ text }) => text)];
  const begins = [{ atTick: 0, walkedM: 0 }, ...end.stages];
  return (
    <ol class="part-deeds-done part-stages">
      {texts.map((text, i) => {
        const [from, to] = [begins[i], begins[i + 1] ?? { atTick: end.tick, walkedM: onFootM(end) }];
        return (
          <li key={i}>
            {from ? (
              <span class="number">
                {clock(from.atTick / TICKS_PER_S)} to {clock(to.atTick / TICKS_PER_S)}, {Math.round(to.walkedM - from.walkedM)} m
              </span>
            ) : (
              <span class="quiet">not come to</span>
            )}{' '}
            {text}
          </li>
        );
      })}
    </ol>
  );
}
