import { useRef } from 'preact/hooks';
import { marksOf } from '../../core/club/tableRow';
import { anonymous, checking, stopChecking, type Taken, takeFiles, taken } from './clubTable';

/** The way in for run files and saved tables, and what each file came to. */
export function FilesTaken() {
  const chooser = useRef<HTMLInputElement>(null);
  const files = taken.value;
  const done = files.filter(({ collected }) => collected).length;
  const faulty = files.filter(({ collected }) => collected && collected.faults.length > 0).length;
  return (
    <section class="club-files" aria-label="Files">
      <div class="club-deeds">
        <button type="button" class={files.length === 0 ? 'primary' : ''} onClick={() => chooser.current?.click()}>
          {files.length === 0 ? 'Choose run files' : 'Add files'}
        </button>
        {checking.value && (
          <button type="button" onClick={stopChecking}>
            Stop checking
          </button>
        )}
        <p role="status">
          {files.length > 0 && (
            <>
              <span class="number">{done}</span> of <span class="number">{files.length}</span> files checked
              {faulty > 0 && `, ${faulty} not taken`}
            </>
          )}
        </p>
      </div>
      <input
        ref={chooser}
        hidden
        multiple
        type="file"
        aria-label="Run files and saved tables"
        accept=".json,.txt,application/json,text/plain"
        onChange={(event) => {
          const chosen = [...(event.currentTarget.files ?? [])];
          event.currentTarget.value = '';
          if (chosen.length > 0) void takeFiles(chosen);
        }}
      />
      {files.length === 0 && (
        <p class="quiet">
          Or drop them anywhere on this page: any number of runs, and a table that was saved earlier to go on with it. Each run is walked
          through again on this device; nothing is sent anywhere.
        </p>
      )}
      {checking.value && (
        <div
          class="club-progress"
          role="progressbar"
          aria-label="Files checked"
          aria-valuemin={0}
          aria-valuemax={files.length}
          aria-valuenow={done}
        >
          <span style={{ width: `${(100 * done) / files.length}%` }} />
        </div>
      )}
      {files.length > 0 && (
        <details open={faulty > 0 || checking.value}>
          <summary>What each file came to</summary>
          <ul class="club-taken">
            {files.map((one, i) => (
              <li key={i}>
                <span>{anonymous.value ? `File ${i + 1}` : one.file.name}</span> <span class="quiet">{cameTo(one)}</span>
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

function cameTo({ collected }: Taken): string {
  if (!collected) return 'waiting';
  const [fault] = collected.faults;
  if (fault) return `not taken: ${fault.path === '' ? '' : `${fault.path}: `}${fault.found}. Mend: ${fault.mend}.`;
  const { rows } = collected.table;
  if (rows.length !== 1) return `table of ${rows.length} runs`;
  return marksOf(rows[0]!);
}
