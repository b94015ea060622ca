import { useEffect } from 'preact/hooks';
import { DRILLS } from '../../core/drills/catalogue';
import type { Drill } from '../../core/drills/drill';
import { cardOf } from '../../core/logbook/card';
import { daysBetween } from '../../core/logbook/day';
import { unlockSound } from '../sound/unlock';
import { book, openBook, today } from '../storage/book';
import { DrillNumber } from './DrillNumber';
import { goTo } from './drillAddress';
import { PageHead } from './PageHead';

/** All ten, each with where one stands; any of them can be chosen at any time. */
export function DrillList({ onLeave }: { readonly onLeave: () => void }) {
  useEffect(() => void openBook(), []);
  return (
    <main class="drill drill-list-page">
      <PageHead title="Drills" out="Start page" onLeave={onLeave} />
      <p class="drill-list-lead quiet">
        One skill a minute, as hard as you can just do it. Today’s card on the start page says what is due; any of them may be chosen here.
      </p>
      <ul class="drill-list">
        {DRILLS.map((drill) => (
          <li key={drill.id}>
            <DrillLine drill={drill} />
          </li>
        ))}
      </ul>
      <nav class="drill-list-more" aria-label="More practice">
        <button type="button" onClick={() => openWithSound('/drills/hearing-check')}>
          Hearing check
        </button>
        <button type="button" onClick={() => openWithSound('/drills/blind-test')}>
          Blind test of 30 places
        </button>
        <button type="button" onClick={() => goTo('/logbook')}>
          Logbook
        </button>
      </nav>
    </main>
  );
}

function openWithSound(path: string): void {
  unlockSound();
  goTo(path);
}

function DrillLine({ drill }: { readonly drill: Drill }) {
  const card = book.value ? cardOf(book.value, drill.id) : null;
  const last = card?.sessions.at(-1);
  const inDays = card?.memory ? daysBetween(today(), card.memory.dueDay) : null;
  const when = inDays === null ? 'new' : inDays < 0 ? `${-inDays} d late` : inDays === 0 ? 'due today' : `due in ${inDays} d`;
  return (
    <div class="drill-line">
      <button type="button" class="drill-line-go" onClick={() => openWithSound(`/drills/${drill.id}`)}>
        <span class="drill-line-title">{drill.title}</span>
        <span class="quiet drill-line-skill">{drill.skill}</span>
        <span class="drill-line-number">{last && <DrillNumber drill={drill} number={last.number} />}</span>
        <span class="quiet drill-line-when">{card ? when : ''}</span>
      </button>
      <button
        type="button"
        class="plain"
        aria-label={`${drill.title} as a check, without hints`}
        onClick={() => openWithSound(`/drills/${drill.id}?check`)}
      >
        Check
      </button>
    </div>
  );
}
