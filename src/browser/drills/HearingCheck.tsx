import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { ROWS } from '../../core/drills/hearingCheck';
import { settings, stepVolume } from '../storage/settings';
import { answerRow, beginCheck, checkResult, checkStage, givenRows, openCheckSound, rowOver } from './hearingPlay';
import { PageHead } from './PageHead';

type Doors = {
  /** Somebody asked for it; else it comes before a drill. */
  readonly asked: boolean;
  readonly onDone: () => void;
  readonly onLater: () => void;
};

/** Half a minute that finds how faint a beep this person hears with this loudspeaker at this volume. */
export function HearingCheck({ asked, onDone, onLater }: Doors) {
  // Before the page is painted: a key pressed as soon as it is seen must not be lost.
  useLayoutEffect(() => {
    const stop = openCheckSound();
    const keys = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || event.repeat) return;
      const on = event.target instanceof HTMLElement ? event.target.closest('button, a') : null;
      if (event.key === 'Escape') onLater();
      else if (checkStage.peek() === 'rows' && /^[1yY]$/.test(event.key)) answerRow(true);
      else if (checkStage.peek() === 'rows' && /^[2nN]$/.test(event.key)) answerRow(false);
      else if (!on && event.key === 'Enter' && checkStage.peek() === 'waiting') beginCheck();
      else if (event.key === '*') stepVolume(1);
      else if (event.key === '/') stepVolume(-1);
      else return;
      event.preventDefault();
    };
    addEventListener('keydown', keys);
    return () => {
      removeEventListener('keydown', keys);
      stop();
    };
  }, []);
  const stage = checkStage.value;
  return (
    <main class="drill">
      <PageHead title="Hearing check" out={asked ? 'All drills' : 'Later'} onLeave={onLater} />
      <div class="drill-waiting">
        {stage === 'waiting' && (
          <>
            <p class="drill-skill">Half a minute: how faint a beep can you just hear?</p>
            <p class="quiet">
              Put on the headphones you will practise with, and go where it is quiet. Drills and the grade of quiet gain then go by your own
              ears, not by your loudspeaker. It is asked again when the volume is moved by more than 6 dB. This is no medical test.
            </p>
            <button type="button" class="primary drill-begin" onClick={beginCheck}>
              Begin <kbd>Enter</kbd>
            </button>
          </>
        )}
        {stage === 'rows' && <Rows />}
        {stage === 'ended' && <Result onDone={onDone} onLater={onLater} />}
      </div>
    </main>
  );
}

function Rows() {
  const done = givenRows.value.length;
  return (
    <>
      <p class="drill-skill">Were there beeps? Some rows are silent on purpose.</p>
      <p class="quiet number" aria-live="off">
        {done + 1} of {ROWS}
      </p>
      <svg class="check-bar" viewBox="0 0 100 2" preserveAspectRatio="none" aria-hidden="true">
        <rect class="drill-caption-room" width="100" height="2" />
        <rect class="check-bar-done" width={(100 * done) / ROWS} height="2" />
      </svg>
      <div class="drill-answers drill-answers-pair">
        <button type="button" class="drill-choice" onClick={() => answerRow(true)}>
          <kbd>1</kbd> I heard it
        </button>
        <button type="button" class="drill-choice" disabled={!rowOver.value} onClick={() => answerRow(false)}>
          <kbd>2</kbd> Nothing
        </button>
      </div>
    </>
  );
}

function Result({ onDone, onLater }: { readonly onDone: () => void; readonly onLater: () => void }) {
  const first = useRef<HTMLButtonElement>(null);
  useEffect(() => first.current?.focus(), []);
  const { verdict, thresholdDb } = checkResult.value!;
  const sound = verdict === 'sound';
  const side =
    Math.abs(thresholdDb) < 0.5
      ? 'as faint as usual'
      : `${Math.abs(thresholdDb).toFixed(1)}\u00a0dB ${thresholdDb < 0 ? 'fainter' : 'louder'} than usual`;
  return (
    <>
      <p class="drill-skill" role="status">
        {sound && `Beeps that you just hear are ${side} at this volume (${String(settings.value.volumeDb).replace('-', '−')}\u00a0dB).`}
        {verdict === 'guessed' && 'You heard beeps in rows that were silent, so this check says nothing. Answer only when you are sure.'}
        {verdict === 'not heard' && 'Next to nothing was heard. Turn the volume up, here or on the device, and look at the plug.'}
      </p>
      {sound && <p class="quiet">Kept in the logbook; runs carry it too.</p>}
      <div class="drill-answers drill-answers-end">
        <button ref={first} type="button" class="primary" onClick={sound ? onDone : beginCheck}>
          {sound ? 'Go on' : 'Once more'}
        </button>
        <button type="button" onClick={sound ? beginCheck : onLater}>
          {sound ? 'Once more' : 'Later'}
        </button>
      </div>
    </>
  );
}
