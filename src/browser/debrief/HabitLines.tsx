import { type Habits, type Ratings, ratedScore, tellingMoment } from '../../core/debrief/moments';
import { HABIT_IDS, type HabitId } from '../../core/technique/habit';
import { HABIT_NAMES, unbroken } from './habitWords';
import { choose, chosenMoment } from './replay';

type Beside = Readonly<Partial<Record<HabitId, number | null>>> | null;

/** Five short bars: score, what one said oneself, the steady walker's where it is known, and one moment a press away. */
export function HabitLines({ habits, ratings, steady }: { readonly habits: Habits; readonly ratings: Ratings; readonly steady: Beside }) {
  return (
    <ol class="habits">
      {HABIT_IDS.map((id) => (
        <HabitLine key={id} id={id} habits={habits} own={ratings[id]} steady={steady?.[id] ?? null} />
      ))}
    </ol>
  );
}

/** What the marks on the bars mean; nothing where there are none. */
export function BarKey({ ratings, hasSteady }: { readonly ratings: Ratings; readonly hasSteady: boolean }) {
  const rated = Object.keys(ratings).length > 0;
  if (!rated && !hasSteady) return null;
  return (
    <p class="bar-key quiet">
      {rated && (
        <span>
          <span class="habit-own" aria-hidden="true" /> what you said
        </span>
      )}
      {hasSteady && (
        <span>
          <span class="habit-steady" aria-hidden="true" /> the steady walker
        </span>
      )}
    </p>
  );
}

function HabitLine({
  id,
  habits,
  own,
  steady,
}: {
  readonly id: HabitId;
  readonly habits: Habits;
  readonly own: number | undefined;
  readonly steady: number | null;
}) {
  const { score, whyNotShown } = habits[id];
  const moment = tellingMoment(habits[id]);
  const pressed = chosenMoment.value?.moment === moment;
  return (
    <li class="habit">
      <div class="habit-head">
        <h3 class="habit-name">{HABIT_NAMES[id]}</h3>
        {own !== undefined && <span class="habit-said quiet">you said {own} of 5</span>}
        <span class="habit-score number">{score === null ? <span class="quiet">not shown</span> : Math.round(score)}</span>
      </div>
      <div class={score === null ? 'habit-bar habit-none' : 'habit-bar'} aria-hidden="true">
        {score !== null && <span class="habit-fill" style={{ width: `${Math.max(1, score)}%` }} />}
        {steady !== null && <span class="habit-steady" style={{ left: `${steady}%` }} />}
        {own !== undefined && <span class="habit-own" style={{ left: `${ratedScore(own)}%` }} />}
      </div>
      {score === null ? (
        <p class="quiet habit-moment">{whyNotShown}</p>
      ) : (
        moment && (
          <button type="button" class="habit-moment" aria-pressed={pressed} onClick={() => choose({ habit: id, moment })}>
            {unbroken(moment.what)}
          </button>
        )
      )}
    </li>
  );
}
