import { effect } from '@preact/signals';
import { PULSE_MS } from '../../core/listening/air';
import { type Beeper, makeBeeper } from '../sound/beeper';
import { settings as deviceSettings } from '../storage/settings';
import { beat, heardSoFar, hinted, now, set, settings, spinDegPerS, stage, takeNow, trial } from './drillState';

/** Seconds from beep to beep: brisker than a tag, so that a minute holds more of them. */
export const PERIOD_S = 0.75;

let beeper: Beeper | null = null;

/** Between the takes of a pair only hiss is heard. */
const betweenTakes = (): boolean => stage.peek() === 'trial' && Boolean(trial.peek()?.takes) && takeNow.peek() === null;

/** Beeps as long as the page is open. @returns stops and lets go of the loudspeaker */
export function openBeeps(): () => void {
  const made = makeBeeper({
    periodS: PERIOD_S,
    pulseMs: PULSE_MS,
    heard: () => (stage.peek() === 'waiting' || !now.peek() ? null : { ...now.peek()!, silentBeep: betweenTakes() }),
    onBeat: () => {
      beat.value++;
      rememberHeard();
    },
  });
  beeper = made;
  const stops = [
    effect(() => {
      void [now.value, stage.value];
      made.changed();
    }),
    effect(() => made.volume(deviceSettings.value.volumeDb, deviceSettings.value.muted)),
    turnByItself(),
  ];
  return () => {
    for (const stop of stops) stop();
    made.close();
    beeper = null;
  };
}

export const startBeeps = (): void => beeper?.start();

/** What was heard on this heading, for hints: the newest of each. */
function rememberHeard(): void {
  const heard = now.peek();
  if (!heard?.audible || stage.peek() !== 'trial' || !hinted.peek()) return;
  heardSoFar.value = [...heardSoFar.peek().filter(({ headingDeg }) => headingDeg !== heard.headingDeg), heard];
}

/** Turns the antenna while something asks for it. */
function turnByItself(): () => void {
  let frame = 0;
  let lastMs = 0;
  let exactDeg = 0;
  const onFrame = (nowMs: number) => {
    frame = requestAnimationFrame(onFrame);
    exactDeg += (spinDegPerS.peek() * Math.min(100, nowMs - lastMs)) / 1_000;
    lastMs = nowMs;
    set({ headingDeg: exactDeg });
  };
  const stop = effect(() => {
    cancelAnimationFrame(frame);
    if (spinDegPerS.value === 0) return;
    exactDeg = settings.peek().headingDeg;
    lastMs = performance.now();
    frame = requestAnimationFrame(onFrame);
  });
  return () => {
    cancelAnimationFrame(frame);
    stop();
  };
}
