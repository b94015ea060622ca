import { RestoreMark, StrikeMark } from '../controls/marks';
import { act, notebook, wholeSecond } from '../currentRun';
import { bearingText } from './words';

const agoText = (s: number): string => (s < 10 ? 'now' : s < 90 ? `${s} s` : `${Math.round(s / 60)} min`);

/** Marked bearings, the newest on top. */
export function NotebookList() {
  const marks = notebook.value;
  const lines = marks.map((mark, number) => ({ mark, number })).reverse();
  if (lines.length === 0) return <p class="quiet notebook-empty">No bearing marked yet.</p>;
  return (
    <ol class="notebook-lines">
      {lines.map(({ mark, number }) => (
        <li key={number} class={mark.struckOut ? 'notebook-line struck' : 'notebook-line'}>
          <span class="number notebook-bearing">
            <span class="quiet">{number + 1}</span> <b>{bearingText(mark.bearingDeg)}</b>
          </span>
          <span class="quiet">
            {mark.struckOut ? 'struck out' : `gain ${Math.round(mark.gainDb)}${mark.attenuatorDb > 0 ? ` − ${mark.attenuatorDb}` : ''}`}
          </span>
          <span class="quiet number notebook-ago">{agoText(wholeSecond.value - Math.floor(mark.atTick / 20))}</span>
          <button
            type="button"
            class="plain"
            aria-label={mark.struckOut ? `Restore bearing ${number + 1}` : `Strike out bearing ${number + 1}`}
            title={mark.struckOut ? 'Restore' : 'Strike out'}
            onClick={() => act({ type: mark.struckOut ? 'unstrike' : 'strikeOut', mark: number })}
          >
            {mark.struckOut ? <RestoreMark /> : <StrikeMark />}
          </button>
        </li>
      ))}
    </ol>
  );
}
