import { useLayoutEffect } from 'preact/hooks';
import type { Scenario } from '../../core/scenario/schema';
import { CAUTION_WORDS } from '../cautionWords';

export type Stage = 'ground' | 'map' | 'waves';
const STAGES: readonly { readonly id: Stage; readonly text: string }[] = [
  { id: 'ground', text: 'Laying out the ground' },
  { id: 'map', text: 'Drawing the map' },
  { id: 'waves', text: 'Sending the first waves' },
];

/** What is read while an exercise opens: the task and its cautions. */
export function Opening({ scenario, stage }: { readonly scenario: Scenario; readonly stage: Stage }) {
  const at = STAGES.findIndex(({ id }) => id === stage);
  // the list of exercises may have been scrolled: its place is not this page's
  useLayoutEffect(() => scrollTo(0, 0), []);
  return (
    <main class="opening">
      <div class="opening-inner">
        <h1>{scenario.title}</h1>
        <p class="opening-brief">{scenario.brief}</p>
        <div class="opening-progress" role="status">
          <span class="opening-bar" aria-hidden="true">
            {STAGES.map(({ id }, i) => (
              <span key={id} class={i < at ? 'reached' : i === at ? 'under-way' : ''} />
            ))}
          </span>
          <span class="quiet">{STAGES[at]?.text} …</span>
        </div>
        {scenario.cautions.length > 0 && (
          <>
            <h3>Outdoors, mind</h3>
            <ul class="cautions">
              {scenario.cautions.map((caution) => (
                <li key={caution}>{CAUTION_WORDS[caution]}</li>
              ))}
            </ul>
          </>
        )}
      </div>
    </main>
  );
}
