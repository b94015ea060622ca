import { TICKS_PER_S } from '../../core/run/state';
import type { KeptRun } from '../storage/unfinished';

/** Whole minutes of the run that have been played. */
export const minutesOf = ({ run }: KeptRun): number => Math.floor(run.tick / (60 * TICKS_PER_S));

type Doors = { readonly runs: readonly KeptRun[]; readonly onGoOn: (run: KeptRun) => void; readonly onForget: (run: KeptRun) => void };

/** Runs that were left before their end, where there are several. */
export function Unfinished({ runs, onGoOn, onForget }: Doors) {
  return (
    <section class="recent">
      <h2>Unfinished</h2>
      <ul>
        {runs.map((kept) => (
          <li key={kept.name} class="unfinished-run">
            <button type="button" class="recent-run" onClick={() => onGoOn(kept)}>
              <span class="recent-title">{kept.run.scenario.title}</span>
              <span class="quiet">
                {kept.keptAtMs > 0 &&
                  new Date(kept.keptAtMs).toLocaleString('en-GB', { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' })}
              </span>
              <span class="recent-outcome">
                <span class="number">{minutesOf(kept)}</span> min walked
              </span>
            </button>
            <button type="button" class="plain" aria-label={`Forget the run of ${kept.run.scenario.title}`} onClick={() => onForget(kept)}>
              Forget
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
