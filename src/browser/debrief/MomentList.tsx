import { bestAndWorst, type Habits } from '../../core/debrief/moments';
import { HABIT_IDS, type HabitId, type Moment } from '../../core/technique/habit';
import { clock } from './charts/chartFrame';
import { HearAgain } from './HearAgain';
import { HABIT_NAMES, unbroken } from './habitWords';
import { choose, chosenMoment } from './replay';

/** The two best and two worst moments of each habit: each takes the scrubber there, and says what to do next time. */
export function MomentList({ habits }: { readonly habits: Habits }) {
  return (
    <div>
      <div class="moments-head label" aria-hidden="true">
        <span />
        <span>To mend</span>
        <span>Went well</span>
      </div>
      <ol>
        {HABIT_IDS.map((id) => (
          <HabitMoments key={id} id={id} habits={habits} />
        ))}
      </ol>
    </div>
  );
}

function HabitMoments({ id, habits }: { readonly id: HabitId; readonly habits: Habits }) {
  const { score, whyNotShown } = habits[id];
  const { best, worst } = bestAndWorst(habits[id]);
  return (
    <li class="moments-habit">
      <h3>
        {HABIT_NAMES[id]} <span class="number">{score === null ? '' : Math.round(score)}</span>
      </h3>
      {score === null ? (
        <p class="quiet moments-none">{whyNotShown}</p>
      ) : (
        <>
          <MomentColumn name="To mend" id={id} moments={worst} />
          <MomentColumn name="Went well" id={id} moments={best} />
        </>
      )}
    </li>
  );
}

function MomentColumn({ name, id, moments }: { readonly name: string; readonly id: HabitId; readonly moments: readonly Moment[] }) {
  return (
    <section class="moments-column" aria-label={`${HABIT_NAMES[id]}: ${name}`}>
      <h4 class="label moments-name">{name}</h4>
      {moments.length === 0 && <p class="quiet">Nothing stood out.</p>}
      {moments.map((moment) => (
        <MomentLine key={`${moment.fromS}${moment.what}`} id={id} moment={moment} />
      ))}
    </section>
  );
}

function MomentLine({ id, moment }: { readonly id: HabitId; readonly moment: Moment }) {
  const pressed = chosenMoment.value?.moment === moment;
  // Moments of the logbook are of weeks: there is no place in the run to jump to.
  if (id === 'keepPractising') {
    return (
      <p class="moment-line moment-still">
        {moment.what} <span class="quiet">{moment.next}</span>
      </p>
    );
  }
  return (
    <div class="moment">
      <button type="button" class="moment-line" aria-pressed={pressed} onClick={() => choose({ habit: id, moment })}>
        <span class="number moment-clock">{clock(moment.fromS)}</span>
        <span>
          {unbroken(moment.what)} <span class="moment-next">{unbroken(moment.next)}</span>
        </span>
      </button>
      {pressed && <HearAgain habit={id} moment={moment} />}
    </div>
  );
}
