import { DRILLS, drillById } from '../../core/drills/catalogue';
import { backupIsDue, sessionsIn } from '../../core/logbook/book';
import { type TodayItem, todaysCard } from '../../core/logbook/today';
import { goTo } from '../route';
import { unlockSound } from '../sound/unlock';
import { book, today } from '../storage/book';

const because = ({ because: why, overdueDays, done }: TodayItem): string =>
  done ? 'done today' : why === 'new' ? 'new' : why === 'soon' ? 'not due yet' : overdueDays > 0 ? `${overdueDays} d late` : 'due today';

function open(id: string): void {
  unlockSound();
  goTo(`/drills/${id}`);
}

const cardNow = (): readonly TodayItem[] =>
  todaysCard(
    book.value ?? [],
    DRILLS.map(({ id }) => id),
    today(),
  );

/** Somebody has practised before: practice comes first. */
export const hasPractised = (): boolean => sessionsIn(book.value ?? []).length > 0;

/** One press to the first drill of the day, from the second visit on; before that, to all of them. */
export function TodayDeed() {
  const first = hasPractised() ? cardNow().find(({ done }) => !done) : undefined;
  if (!first)
    return (
      <button type="button" class="start-go" onClick={() => goTo('/drills')}>
        Drills
        <span class="start-go-what">ten skills, a minute each</span>
      </button>
    );
  return (
    <button type="button" class="primary start-go" onClick={() => open(first.drill)}>
      Practise
      <span class="start-go-what">
        {drillById(first.drill)!.title}, {because(first)}
      </span>
    </button>
  );
}

/** What is due, what is new, what is done: ten minutes. */
export function TodayCard() {
  if (!book.value || !hasPractised()) return null;
  return (
    <section class="today">
      <h2>Today’s ten minutes</h2>
      <ul>
        {cardNow().map((item) => (
          <li key={item.drill}>
            <button type="button" class={item.done ? 'today-line today-done' : 'today-line'} onClick={() => open(item.drill)}>
              <span class="today-title">{drillById(item.drill)!.title}</span>
              <span class="quiet">{because(item)}</span>
            </button>
          </li>
        ))}
      </ul>
      <div class="today-more">
        <button type="button" onClick={() => goTo('/drills')}>
          All drills
        </button>
        <button type="button" onClick={() => goTo('/logbook')}>
          Logbook
        </button>
      </div>
      {backupIsDue(book.value) && <p class="quiet">The logbook has not been saved for five runs: save it as a file in the Logbook.</p>}
    </section>
  );
}
