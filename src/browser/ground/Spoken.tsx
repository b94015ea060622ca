import { effect, signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { RunState } from '../../core/run/state';
import { openRun, paused, runState } from '../currentRun';
import { changesInWords, hereInWords } from './spokenWords';

/** Changes are said once the hand has rested so long, ms: a turned knob says where it came to, not each step. */
const REST_MS = 350;
const said = signal('');

/** For a screen reader: every change that a picture shows is said here, and where one stands when it is asked for. */
export function Spoken() {
  useEffect(sayChanges, []);
  return (
    <p class="unseen" role="status" aria-label="What changed">
      {said.value}
    </p>
  );
}

export function sayHere(): void {
  const [state, scenario] = [runState.peek(), openRun.peek()?.exercise.scenario];
  if (!state || !scenario) return;
  const [eM, nM] = scenario.start.at;
  said.value = hereInWords(state, { eM, nM }, scenario.aids);
}

function sayChanges(): () => void {
  said.value = '';
  let told: RunState | null = runState.peek();
  let timer: ReturnType<typeof setTimeout> | null = null;
  let awaited = '';
  const tell = () => {
    timer = null;
    const [now, scenario] = [runState.peek(), openRun.peek()?.exercise.scenario];
    if (now && told && scenario && !paused.peek())
      said.value = changesInWords(told, now, scenario.aids, scenario.limits.walkM).join('. ') || said.peek();
    told = now;
  };
  const stop = effect(() => {
    const [now, scenario] = [runState.value, openRun.peek()?.exercise.scenario];
    if (!now || !told || !scenario) return;
    const words = changesInWords(told, now, scenario.aids, scenario.limits.walkM).join('. ');
    if (words === awaited) return;
    awaited = words;
    if (timer !== null) clearTimeout(timer);
    timer = words === '' ? null : setTimeout(tell, REST_MS);
  });
  return () => {
    stop();
    if (timer !== null) clearTimeout(timer);
  };
}
