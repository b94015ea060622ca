import { rowAt, type Timeline } from '../../core/debrief/timeline';
import { atS, type ChosenMoment, choose, chosenMoment, play, seek, seekBy } from './replay';

const STEP_S = 5;
const LONG_STEP_S = 30;

/** The debrief on a keyboard: play, steps, beep by beep, moment by moment. @returns stops listening */
export function debriefKeys(timeline: Timeline, moments: readonly ChosenMoment[], layers: () => void): () => void {
  const down = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || !(event.target instanceof HTMLElement)) return;
    if (event.target instanceof HTMLInputElement) return;
    const onControl = event.target.closest('button, a, summary, [role="slider"]') !== null;
    const key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
    if (onControl && [' ', 'Enter', 'ArrowLeft', 'ArrowRight'].includes(key)) return;
    const deed = deedOf(key, event.shiftKey);
    if (!deed) return;
    event.preventDefault();
    deed();
  };
  function deedOf(key: string, long: boolean): (() => void) | undefined {
    const step = long ? LONG_STEP_S : STEP_S;
    const deeds: Readonly<Record<string, () => void>> = {
      ' ': play,
      p: play,
      ArrowLeft: () => seekBy(-step),
      ArrowRight: () => seekBy(step),
      ',': () => beep(-1),
      '.': () => beep(1),
      '[': () => moment(-1),
      ']': () => moment(1),
      l: layers,
      Escape: () => choose(null),
    };
    return deeds[key];
  }
  function beep(by: 1 | -1): void {
    const row = rowAt(timeline, atS.peek());
    const onBeep = row >= 0 && Math.abs(timeline.timeS[row]! - atS.peek()) < 0.001;
    const next = timeline.timeS[by > 0 ? row + 1 : onBeep ? row - 1 : row];
    if (next !== undefined) seek(next);
  }
  function moment(by: 1 | -1): void {
    const chosen = moments.findIndex((one) => one.moment === chosenMoment.peek()?.moment);
    const from = chosen >= 0 ? chosen : by > 0 ? -1 : moments.length;
    const next = moments[from + by];
    if (next) choose(next);
  }
  addEventListener('keydown', down);
  return () => removeEventListener('keydown', down);
}
