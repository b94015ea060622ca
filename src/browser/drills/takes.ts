import { PERIOD_S } from './drillSound';
import { settings, stage, takeNow, trial } from './drillState';

const BEEPS_A_TAKE = 2;
let timer = 0;

/** Plays the takes of the trial one after another, two beeps each. */
export function playTakes(): void {
  const takes = trial.peek()?.takes ?? [];
  clearTimeout(timer);
  const play = (index: number) => {
    if (stage.peek() !== 'trial') return;
    takeNow.value = index < takes.length ? index : null;
    const take = takes[index];
    if (!take) return;
    settings.value = take.settings;
    timer = window.setTimeout(() => play(index + 1), BEEPS_A_TAKE * PERIOD_S * 1_000);
  };
  play(0);
}

export function stopTakes(): void {
  clearTimeout(timer);
  takeNow.value = null;
}
