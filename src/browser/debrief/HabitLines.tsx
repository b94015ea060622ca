import { HABIT_IDS, type Moment } from '../../core/technique/habit';
import { HearAgain } from './HearAgain';
import { HABIT_NAMES, type Habits, tellingMoment } from './habitWords';
import type { Ratings } from './SelfRating';

/** Five short bars: score, what one said oneself, and one moment that can be looked at on the map and the chart. */
export function HabitLines({
  habits,
  ratings,
  shown,
  onShow,
}: {
  readonly habits: Habits;
  readonly ratings: Ratings;
  readonly shown: Moment | null;
  readonly onShow: (moment: Moment) => void;
}) {
  return (
    <ol class="habits">
      {HABIT_IDS.map((id) => {
        const { score, whyNotShown } = habits[id];
        const moment = tellingMoment(habits[id]);
        const own = ratings[id];
        return (
          <li key={id} class="habit">
            <div class="habit-head">
              <h3 class="habit-name">{HABIT_NAMES[id]}</h3>
              <span class="habit-score number">{score === null ? <span class="quiet">not shown</span> : Math.round(score)}</span>
            </div>
            <div class={score === null ? 'habit-bar habit-none' : 'habit-bar'} aria-hidden="true">
              {score !== null && <span class="habit-fill" style={{ width: `${Math.max(1, score)}%` }} />}
              {own !== undefined && <span class="habit-own" style={{ left: `${own * 20 - 10}%` }} title="Your own rating" />}
            </div>
            {own !== undefined && <p class="unseen">You rated yourself {own} of 5.</p>}
            {score === null ? (
              <p class="quiet habit-moment">{whyNotShown}</p>
            ) : (
              moment && (
                <>
                  <button type="button" class="habit-moment" aria-pressed={shown === moment} onClick={() => onShow(moment)}>
                    {moment.what} <span class="quiet">{moment.good ? 'Keep at it.' : moment.next}</span>
                  </button>
                  <HearAgain habit={id} moment={moment} />
                </>
              )
            )}
          </li>
        );
      })}
    </ol>
  );
}
