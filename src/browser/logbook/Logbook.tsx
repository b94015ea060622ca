import { useEffect } from 'preact/hooks';
import { practiceDays } from '../../core/logbook/book';
import { book, openBook, today } from '../storage/book';
import { NotesPart } from './NotesPart';
import { PracticePart } from './PracticePart';
import { RunsPart } from './RunsPart';
import { SavingPart } from './SavingPart';
import { TrendPart } from './TrendPart';

type Doors = { readonly onBack: () => void; readonly onDrills: () => void; readonly onDebrief: (key: number) => void };

/** The learner's own record over weeks. */
export function Logbook({ onBack, onDrills, onDebrief }: Doors) {
  useEffect(() => void openBook(), []);
  const now = book.value;
  if (!now) return null;
  const days = practiceDays(now).length;
  return (
    <main class="book">
      <header class="book-head">
        <h1>Logbook</h1>
        <p class="quiet">
          <span class="number">{days}</span> {days === 1 ? 'day' : 'days'} of practice, <span class="number">{now.length}</span>{' '}
          {now.length === 1 ? 'entry' : 'entries'}
        </p>
        <button type="button" onClick={onDrills}>
          Drills
        </button>
        <button type="button" onClick={onBack}>
          Start page
        </button>
      </header>
      <div class="book-columns">
        <div>
          <TrendPart book={now} />
          <RunsPart book={now} onDebrief={onDebrief} />
        </div>
        <div>
          <PracticePart book={now} day={today()} />
          <NotesPart book={now} />
          <SavingPart book={now} />
        </div>
      </div>
    </main>
  );
}
