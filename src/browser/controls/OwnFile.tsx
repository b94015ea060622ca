import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { type Fault, InputFaults } from '../../core/scenario/faults';
import type { Scenario } from '../../core/scenario/schema';
import { readFile } from '../workers/readFile';

/** Opens an exercise from a file; what is wrong with it is listed with its mend. */
export function OwnFile({
  words = 'Open your own exercise',
  onOpen,
}: {
  readonly words?: string;
  readonly onOpen: (scenario: Scenario) => void;
}) {
  const chooser = useRef<HTMLInputElement>(null);
  const faults = useSignal<readonly Fault[]>([]);
  const read = async (file: File) => {
    try {
      faults.value = [];
      onOpen(await readFile('scenario', file));
    } catch (fault) {
      if (!(fault instanceof InputFaults)) throw fault;
      faults.value = fault.faults;
    }
  };
  return (
    <section class="own-file">
      <button type="button" onClick={() => chooser.current?.click()}>
        {words}
      </button>
      <input
        ref={chooser}
        hidden
        type="file"
        aria-label="Exercise file"
        accept=".json,.txt,application/json,text/plain"
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          event.currentTarget.value = '';
          if (file) void read(file);
        }}
      />
      <div role="alert">
        {faults.value.length > 0 && (
          <>
            <p class="own-file-title">
              {faults.value[0]!.file} can’t be opened: {faults.value.length === 1 ? 'one fault' : `${faults.value.length} faults`}
            </p>
            <ul class="own-file-faults">
              {faults.value.slice(0, 12).map(({ path, found, mend }) => (
                <li key={`${path}${found}`}>
                  <code>{path === '' ? 'the whole file' : path}</code> {found}. <span class="quiet">Mend: {mend}.</span>
                </li>
              ))}
            </ul>
          </>
        )}
      </div>
    </section>
  );
}
