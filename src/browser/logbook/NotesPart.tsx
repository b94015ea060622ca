import { useSignal } from '@preact/signals';
import { type Book, notesIn } from '../../core/logbook/book';
import { entryNow, keepInBook } from '../storage/book';

/** As long as a note may be. */
const LONGEST = 4_000;

const keepNote = (text: string, note?: string): void => {
  const entry = entryNow();
  void keepInBook([{ ...entry, kind: 'note', note: note ?? entry.id, text: text.trim().slice(0, LONGEST) }]);
};

/** What the learner wants to remember; older versions stay in the book. */
export function NotesPart({ book }: { readonly book: Book }) {
  const text = useSignal('');
  const changing = useSignal<string | undefined>(undefined);
  return (
    <section class="book-part">
      <h2>Notes</h2>
      <label class="label" for="book-note">
        {changing.value ? 'Change the note' : 'A new note'}
      </label>
      <textarea
        id="book-note"
        rows={3}
        maxLength={LONGEST}
        value={text.value}
        onInput={(event) => {
          text.value = event.currentTarget.value;
        }}
      />
      <div class="book-deeds">
        <button
          type="button"
          disabled={text.value.trim() === ''}
          onClick={() => {
            keepNote(text.value, changing.value);
            text.value = '';
            changing.value = undefined;
          }}
        >
          Keep the note
        </button>
      </div>
      <ul class="book-list">
        {notesIn(book).map((note) => (
          <li key={note.note} class="book-note">
            <span class="quiet number">{note.day}</span>
            <p>{note.text}</p>
            <button
              type="button"
              class="plain"
              aria-label={`Change the note of ${note.day}`}
              onClick={() => {
                text.value = note.text;
                changing.value = note.note;
              }}
            >
              Change
            </button>
            <button type="button" class="plain" aria-label={`Strike out the note of ${note.day}`} onClick={() => keepNote('', note.note)}>
              Strike out
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
