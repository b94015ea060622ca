import { MutedMark, SpeakerMark } from '../controls/marks';
import { heldUp, notebook, openRun, paused, taskText, walkedM, wholeSecond } from '../currentRun';
import { change, settings } from '../storage/settings';
import { lengthText } from './measures';
import { notebookShown } from './panels';
import { clockText } from './words';

/** One line on top: the exercise, the task, time, distance, pause. */
export function Bar() {
  const scenario = openRun.value?.exercise.scenario;
  const mostM = scenario?.limits.walkM;
  const [distance, unit] = lengthText(mostM === undefined ? walkedM.value : Math.max(0, Math.ceil(mostM - walkedM.value)));
  const { muted } = settings.value;
  return (
    <header class="bar">
      <h1 class="bar-title">{scenario?.title}</h1>
      <p class="bar-task quiet">{taskText.value}</p>
      <p class="bar-number number">
        <span class="unseen">Time </span>
        {clockText(wholeSecond.value)}
      </p>
      <p class="bar-number number bar-walked">
        {mostM === undefined && <span class="unseen">Walked </span>}
        {distance} <span class="unit">{mostM === undefined ? unit : `${unit} left`}</span>
      </p>
      <button
        type="button"
        class="plain bar-notebook"
        aria-expanded={notebookShown.value}
        onClick={() => {
          notebookShown.value = !notebookShown.value;
        }}
      >
        Notebook <span class="number">{notebook.value.length}</span>
      </button>
      <button
        type="button"
        class="plain bar-sound"
        aria-label={muted ? 'Sound on' : 'Sound off'}
        aria-pressed={muted}
        onClick={() => change({ muted: !muted })}
      >
        {muted ? <MutedMark /> : <SpeakerMark />}
      </button>
      <button
        type="button"
        class="plain bar-pause"
        disabled={heldUp.value}
        onClick={() => {
          paused.value = !paused.value;
        }}
      >
        {paused.value ? 'Go on' : 'Pause'}
      </button>
    </header>
  );
}
