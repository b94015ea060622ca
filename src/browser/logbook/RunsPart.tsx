import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { type Book, runsIn } from '../../core/logbook/book';
import { type FinishedLine, recentlyFinished } from '../storage/finishedRuns';

const MOST = 200;

/** Every run with its grade; those whose recording lies on this device open their debrief. */
export function RunsPart({ book, onDebrief }: { readonly book: Book; readonly onDebrief: (key: number) => void }) {
  const kept = useSignal<readonly FinishedLine[]>([]);
  useEffect(() => {
    void recentlyFinished(MOST).then((found) => {
      kept.value = found;
    });
  }, []);
  const runs = [...runsIn(book)].reverse();
  return (
    <section class="book-part">
      <h2>Runs</h2>
      {runs.length === 0 && <p class="quiet">Runs on the ground are entered here when their debrief has been seen.</p>}
      <ul class="book-list">
        {runs.map(({ id, day, title, technique, found, minutes }) => {
          const key = kept.value.find(({ entry }) => entry === id)?.key;
          return (
            <li key={id} class="book-run">
              <span class="quiet number">{day}</span>
              <span class="book-run-title">{title}</span>
              <span>
                {found ? 'found in' : 'not found,'} <span class="number">{Math.round(minutes)}</span> min
                {technique !== null && (
                  <>
                    , technique <span class="number">{Math.round(technique)}</span>
                  </>
                )}
              </span>
              {key === undefined ? (
                <span class="quiet book-run-open">no debrief here</span>
              ) : (
                <button type="button" class="plain book-run-open" aria-label={`Debrief of ${title}, ${day}`} onClick={() => onDebrief(key)}>
                  Debrief
                </button>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
