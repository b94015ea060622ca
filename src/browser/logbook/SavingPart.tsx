import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { type Book, backupIsDue, mergedBooks, runsSinceBackup } from '../../core/logbook/book';
import { bookText } from '../../core/logbook/bookFile';
import { InputFaults } from '../../core/scenario/faults';
import { saveFile } from '../saveFile';
import { askToPersist, entryNow, keepFault, keepInBook, openBook, today } from '../storage/book';
import { readFile } from '../workers/readFile';

/** The whole book as one file, out and in; whether the browser promises to keep it. */
export function SavingPart({ book }: { readonly book: Book }) {
  const chooser = useRef<HTMLInputElement>(null);
  const said = useSignal('');
  const fault = useSignal('');
  const persisted = useSignal<boolean | null>(null);
  useEffect(() => {
    if (book.length === 0) return;
    void askToPersist().then((answer) => {
      persisted.value = answer;
    });
  }, [book.length === 0]);
  const save = async () => {
    const entry = { ...entryNow(), kind: 'backup' } as const;
    // The file holds the entry of its own making, so that a book read back asks for no new copy.
    saveFile(`faintward-logbook-${today()}.json`, bookText(mergedBooks(book, [entry])));
    await keepInBook([entry]);
  };
  const read = async (file: File) => {
    [said.value, fault.value] = ['', ''];
    try {
      const records = await readFile('book', file);
      const before = (await openBook()).length;
      await keepInBook(records);
      said.value = `${(await openBook()).length - before} new entries of ${records.length}; nothing was lost.`;
    } catch (failed) {
      if (!(failed instanceof InputFaults)) throw failed;
      const { path, found, mend } = failed.faults[0]!;
      fault.value = `${file.name} can’t be read: ${path === '' ? '' : `${path}: `}${found}. Mend: ${mend}.`;
    }
  };
  return (
    <section class="book-part">
      <h2>Keeping it</h2>
      {keepFault.value !== '' && (
        <p role="alert" class="keep-fault">
          {keepFault.value === 'full'
            ? 'This device has no room left: the last entries are in memory only. Save the logbook as a file before you close the page.'
            : 'This browser keeps nothing: the logbook is in memory only. Save it as a file before you close the page.'}
        </p>
      )}
      {backupIsDue(book) && (
        <p class="keep-fault">
          <span class="number">{runsSinceBackup(book)}</span> runs since the last copy: save the logbook as a file.
        </p>
      )}
      <div class="book-deeds">
        <button type="button" class={backupIsDue(book) || keepFault.value !== '' ? 'primary' : ''} onClick={() => void save()}>
          Save as a file
        </button>
        <button type="button" onClick={() => chooser.current?.click()}>
          Add from a file
        </button>
      </div>
      <input
        ref={chooser}
        hidden
        type="file"
        aria-label="Logbook file"
        accept=".json,application/json"
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          event.currentTarget.value = '';
          if (file) void read(file);
        }}
      />
      <p role="status">{said.value}</p>
      <p role="alert">{fault.value}</p>
      <p class="quiet">
        {persisted.value === true
          ? 'The browser has promised not to clear it.'
          : 'It lies in this browser only, and the browser may clear it when room gets short: save it now and then.'}{' '}
        Adding a file lays both books together: every entry of either stays, each once.
      </p>
    </section>
  );
}
