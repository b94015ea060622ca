import type { SeasonLine } from '../../core/club/season';

/** Latest dates that have a column of their own; the rest are counted. */
const MOST_DAYS = 8;
const tenth = (value: number | null): string => (value === null ? '–' : value.toFixed(1));

/** Everybody over all exercises and dates: mean technique, who was there when, and whether it changed by more than chance. */
export function SeasonPart({ season }: { readonly season: readonly SeasonLine[] }) {
  const days = [...new Set(season.flatMap((line) => line.days))].sort();
  const shown = days.slice(-MOST_DAYS);
  const places = season.map(({ place }) => place);
  return (
    <section class="club-part" aria-label="Over all exercises and dates">
      <h2>Over all exercises and dates</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by key */}
      <section class="club-scroll" tabIndex={0} aria-label="Season, table">
        <table class="club-table club-season">
          <thead>
            <tr>
              <th scope="col">Place</th>
              <th scope="col">Name</th>
              <th scope="col">Mean technique</th>
              <th scope="col">Runs</th>
              <th scope="col">Found</th>
              <th scope="col">Dates there</th>
              {shown.map((day) => (
                <th key={day} scope="col" class="number">
                  <time dateTime={day}>{day.slice(5)}</time>
                </th>
              ))}
              <th scope="col">First to last date</th>
              <th scope="col">Keep practising</th>
            </tr>
          </thead>
          <tbody>
            {season.map((line, i) => (
              <tr key={i}>
                <td class="number club-place">
                  {line.place ?? '–'}
                  {line.place !== null && places.filter((place) => place === line.place).length > 1 && '='}
                </td>
                <th scope="row">{line.name || 'no name'}</th>
                <td class="number">
                  {tenth(line.meanTechnique)}
                  {line.preliminary && line.meanTechnique !== null && <span class="club-why">few runs</span>}
                </td>
                <td class="number">{line.runs}</td>
                <td class="number">{line.found}</td>
                <td class="number">
                  {line.days.length}
                  {line.undatedRuns > 0 && <span class="club-why">{line.undatedRuns} without a date</span>}
                </td>
                {shown.map((day) => (
                  <td key={day} class="club-there">
                    {line.days.includes(day) ? (
                      <>
                        <svg viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
                          <circle cx="6" cy="6" r="5" fill="currentColor" />
                        </svg>
                        <span class="unseen">there</span>
                      </>
                    ) : (
                      <span class="unseen">not there</span>
                    )}
                  </td>
                ))}
                <td>{line.change}</td>
                <td class="number">{line.keepPractising === null ? '–' : Math.round(line.keepPractising)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p class="quiet">
        The mean is of first attempts. Dates are what the devices’ clocks said
        {days.length > MOST_DAYS && `; the last ${MOST_DAYS} of ${days.length} have columns`}. Keep practising is each learner’s own
        statement; nobody has checked it.
      </p>
    </section>
  );
}
