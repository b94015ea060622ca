import { useSignal } from '@preact/signals';
import './keepNote.css';
import { runKeeping } from './storage/runs';
import type { KeepFault } from './storage/shelf';
import { tryUnkept, unkeptRuns } from './unkeptRuns';

const WHY: Readonly<Record<Exclude<KeepFault, ''>, string>> = {
  full: 'This device has no room left.',
  refused: 'This browser keeps nothing just now.',
};

/** While a run is being played that the browser does not keep. */
export function KeepNote() {
  const putAway = useSignal<KeepFault>('');
  const fault = runKeeping.value;
  if (fault === '' || fault === putAway.value) return null;
  return (
    <div class="keep-note">
      <p role="alert">
        <b>{WHY[fault]}</b> The run goes on, but closing the page would lose it. Make room, or save the run file at its end.
      </p>
      <button
        type="button"
        class="plain"
        onClick={() => {
          putAway.value = fault;
        }}
      >
        Understood
      </button>
    </div>
  );
}

/** Over the debrief of a run that is in memory only. */
export function UnkeptNote({ onSave }: { readonly onSave: (() => void) | null }) {
  if (unkeptRuns() === 0) return null;
  return (
    <div class="keep-note">
      <p role="alert">
        <b>{WHY[runKeeping.value || 'refused']}</b> This run is in memory only, and closing the page would lose it
        {onSave ? ': save its run file, or make room and try again.' : '. Its run file can be saved beside the grade.'}
      </p>
      <span class="keep-note-deeds">
        {onSave && (
          <button type="button" onClick={onSave}>
            Save run file
          </button>
        )}
        <button type="button" onClick={() => void tryUnkept()}>
          Try again
        </button>
      </span>
    </div>
  );
}
