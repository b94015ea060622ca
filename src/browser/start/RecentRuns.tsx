import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Recording } from '../../core/run/record';
import { InputFaults } from '../../core/scenario/faults';
import { type FinishedLine, recentlyFinished } from '../storage/finishedRuns';
import { readFile } from '../workers/readFile';

const MOST = 6;

/** The last runs played here, each a press away from its debrief, and a way in for anybody's run file. */
export function RecentRuns({
  onOpen,
  onFile,
}: {
  readonly onOpen: (key: number) => void;
  readonly onFile: (recording: Recording) => void;
}) {
  const lines = useSignal<readonly FinishedLine[]>([]);
  const fault = useSignal('');
  const chooser = useRef<HTMLInputElement>(null);
  useEffect(() => {
    void recentlyFinished(MOST).then((found) => {
      lines.value = found;
    });
  }, []);
  const read = async (file: File) => {
    try {
      fault.value = '';
      onFile(await readFile('run', file));
    } catch (failed) {
      if (!(failed instanceof InputFaults)) throw failed;
      const { path, found, mend } = failed.faults[0]!;
      fault.value = `${file.name} can’t be opened: ${path === '' ? '' : `${path}: `}${found}. Mend: ${mend}.`;
    }
  };
  return (
    <section class="recent">
      <h2>Debriefs</h2>
      {lines.value.length === 0 && <p class="quiet">Runs that you finish here are kept on this device and can be gone through again.</p>}
      <ul>
        {lines.value.map((line) => (
          <li key={line.key}>
            <RunLine line={line} onOpen={onOpen} />
          </li>
        ))}
      </ul>
      <button type="button" onClick={() => chooser.current?.click()}>
        Open a run file
      </button>
      <input
        ref={chooser}
        hidden
        type="file"
        aria-label="Run file"
        accept=".json,.txt,application/json,text/plain"
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          event.currentTarget.value = '';
          if (file) void read(file);
        }}
      />
      <p role="alert">{fault.value}</p>
    </section>
  );
}

function RunLine({
  line: { key, title, endedAt, outcome },
  onOpen,
}: {
  readonly line: FinishedLine;
  readonly onOpen: (key: number) => void;
}) {
  const when = new Date(endedAt);
  const said = when.toLocaleString('en-GB', { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' });
  return (
    <button type="button" class="recent-run" onClick={() => onOpen(key)}>
      <span class="recent-title">{title}</span>
      <span class="quiet">{said}</span>
      <span class="recent-outcome">
        {outcome && (
          <>
            {outcome.found ? 'found in' : 'not found,'} <span class="number">{Math.max(1, Math.round(outcome.timeS / 60))}</span> min
            {outcome.technique !== null && (
              <>
                , technique <span class="number">{Math.round(outcome.technique)}</span>
              </>
            )}
          </>
        )}
      </span>
    </button>
  );
}
