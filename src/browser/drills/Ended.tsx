import { useEffect, useRef } from 'preact/hooks';
import { DRILLS, drillById } from '../../core/drills/catalogue';
import { numberOf, type Session } from '../../core/drills/session';
import { todaysCard } from '../../core/logbook/today';
import { book, keepFault, today } from '../storage/book';
import { DrillNumber } from './DrillNumber';
import { goTo } from './drillAddress';
import { openDrill, showBest } from './drillPlay';
import { session } from './drillState';

/** What is on today's card and not done yet, other than this one. */
function nextOf(id: string): string | null {
  const card = todaysCard(
    book.value ?? [],
    DRILLS.map((drill) => drill.id),
    today(),
  );
  return card.find(({ drill, done }) => !done && drill !== id)?.drill ?? null;
}

/** One number, one sentence; the last situation stays to be looked at and heard again. */
export function Ended() {
  const first = useRef<HTMLButtonElement>(null);
  useEffect(() => first.current?.focus(), []);
  const done = session.value as Session;
  const { drill, kind } = done;
  const number = numberOf(done);
  const next = nextOf(drill.id);
  const again = () => void openDrill(drill, kind);
  const [main, other] = next ? [() => goTo(`/drills/${next}`), again] : [again, null];
  return (
    <section class="drill-ended" aria-label="How it went">
      <p class="drill-number">
        <DrillNumber drill={drill} number={number} />
        <span class="drill-measures quiet"> {drill.measures}</span>
      </p>
      <p class="drill-says" role="status">
        {drill.says(number)}
      </p>
      {keepFault.value !== '' && <KeepFault />}
      <div class="drill-answers drill-answers-end">
        <button ref={first} type="button" class="primary" onClick={main}>
          {next ? `Next: ${drillById(next)!.title}` : 'Once more'}
        </button>
        {other && (
          <button type="button" onClick={other}>
            Once more
          </button>
        )}
        <button type="button" onClick={showBest}>
          Hear it right
        </button>
        <button type="button" class="plain" onClick={() => goTo('/logbook')}>
          Logbook
        </button>
      </div>
    </section>
  );
}

function KeepFault() {
  return (
    <p role="alert" class="keep-fault">
      {keepFault.value === 'full'
        ? 'This device has no room left: the session is in memory only. Free some space, or save the logbook as a file before you close the page.'
        : 'This browser keeps nothing: the session is in memory only. Save the logbook as a file before you close the page.'}
    </p>
  );
}
