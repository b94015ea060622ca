import type { RefObject } from 'preact';
import { CloseMark } from '../controls/marks';
import { clock } from './charts/chartFrame';
import { HearAgain } from './HearAgain';
import { HABIT_NAMES, unbroken } from './habitWords';
import { type ChosenMoment, choose, chosenMoment } from './replay';

/** What the chosen moment was, at the map's foot, and the ways to the next one. */
export function MomentSlip({
  moments,
  holder,
}: {
  readonly moments: readonly ChosenMoment[];
  readonly holder: RefObject<HTMLElement | null>;
}) {
  const now = chosenMoment.value;
  if (!now) return null;
  const number = moments.findIndex(({ moment }) => moment === now.moment);
  const step = (by: 1 | -1) => {
    const next = moments[number + by];
    if (next) choose(next);
    holder.current?.focus({ preventScroll: true });
  };
  return (
    <aside class="moment-slip" aria-live="polite">
      <p class="moment-slip-head">
        <span class="number">{clock(now.moment.fromS)}</span> {HABIT_NAMES[now.habit]}
        <span class="quiet">
          {' '}
          {number + 1} of {moments.length}
        </span>
      </p>
      <p>
        {unbroken(now.moment.what)} <b>{unbroken(now.moment.next)}</b>
      </p>
      <div class="moment-slip-ways">
        <HearAgain habit={now.habit} moment={now.moment} />
        <button type="button" class="plain" disabled={number <= 0} onClick={() => step(-1)} title="[">
          Earlier
        </button>
        <button type="button" class="plain" disabled={number >= moments.length - 1} onClick={() => step(1)} title="]">
          Later
        </button>
        <button type="button" class="plain" aria-label="Put the moment away" onClick={() => choose(null)}>
          <CloseMark />
        </button>
      </div>
    </aside>
  );
}
