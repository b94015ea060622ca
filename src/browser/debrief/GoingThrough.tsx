import { reading } from '../finishedRun';

/** A kept run or a run file on its way into the debrief. */
export function GoingThrough({ onBack }: { readonly onBack: () => void }) {
  const { title, share, fault } = reading.value!;
  return (
    <main class="opening">
      <div class="opening-inner">
        <h1>{title}</h1>
        {fault === null ? (
          <div class="opening-progress">
            <div
              class="layer-progress"
              role="progressbar"
              aria-label="Going through the run"
              aria-valuemin={0}
              aria-valuemax={100}
              aria-valuenow={Math.round(100 * share)}
            >
              <span style={{ width: `${Math.max(2, 100 * share)}%` }} />
            </div>
            <span class="quiet">Going through the run: every wave again, and what it did …</span>
          </div>
        ) : (
          <>
            <p role="alert">This run could not be opened: {fault}</p>
            <button type="button" onClick={onBack}>
              Back
            </button>
          </>
        )}
      </div>
    </main>
  );
}
