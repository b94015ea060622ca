import type { HabitPicture, HabitStanding } from '../../core/club/habitPicture';

/** What the club can do, habit by habit: the middle half of the runs as a bar, the median as a stroke; and what to teach next. */
export function HabitsPart({ picture }: { readonly picture: HabitPicture }) {
  return (
    <section class="club-part" aria-label="What the club can do">
      <h2>What the club can do</h2>
      <p class="club-teach">{picture.teachNext}</p>
      <ul class="club-habits">
        {picture.habits.map((of) => (
          <li key={of.habit}>
            <div class="club-habit-head">
              <b>{of.name}</b>
              <span class="quiet">
                shown by <span class="number">{of.shown}</span> of <span class="number">{of.of}</span>
                {of.under50 > 0 && (
                  <>
                    , <span class="number">{of.under50}</span> under 50
                  </>
                )}
              </span>
              <span class="number club-median">{of.median === null ? '–' : Math.round(of.median)}</span>
            </div>
            <Bar of={of} />
            {of.next && <p class="quiet">{of.next}</p>}
          </li>
        ))}
      </ul>
      <p class="quiet">Bar: the middle half of the runs, from 0 to 100. Stroke and number: the median.</p>
    </section>
  );
}

function Bar({ of: { lowerQuartile, median, upperQuartile } }: { readonly of: HabitStanding }) {
  const known = lowerQuartile !== null && median !== null && upperQuartile !== null;
  return (
    <svg class="club-bar" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
      <path class="club-bar-ground" d="M0 0h100v4H0z" />
      {known && (
        <path class="club-bar-middle" d={`M${lowerQuartile} 0H${Math.max(upperQuartile, lowerQuartile + 0.6)}v4H${lowerQuartile}z`} />
      )}
      {known && <path class="club-bar-median" d={`M${Math.min(99.4, Math.max(0.6, median))} 0v4`} />}
      <path class="club-bar-half" d="M50 0v4" />
    </svg>
  );
}
