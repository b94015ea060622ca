import { tickOnce } from '../core/run/live';
import { TICK_S } from '../core/run/state';
import { keepTick, live, openRun, paused, takeActions } from './currentRun';
import { openRunSound } from './runSound';
import type { SoundOutput } from './sound/output';

/** The longest piece of time that one frame makes up for; what is longer was a halt of the page, not of the walker. */
const MOST_CATCH_UP_S = 0.25;

/** Drives the open run at its fixed ticks from the screen's frames, and gives the sound what is heard. @returns stops it */
export function startRunClock(sound: () => SoundOutput | null): () => void {
  let frame = 0;
  let lastMs = performance.now();
  let owedS = 0;
  const runSound = openRunSound(sound, () => owedS + Math.min(MOST_CATCH_UP_S, (performance.now() - lastMs) / 1000));
  const onFrame = (nowMs: number) => {
    frame = requestAnimationFrame(onFrame);
    const passedS = Math.min(MOST_CATCH_UP_S, (nowMs - lastMs) / 1000);
    lastMs = nowMs;
    const open = openRun.peek();
    if (!open || paused.peek() || live.peek()?.state.ending !== null) {
      owedS = 0;
      return;
    }
    owedS += passedS;
    // A text that comes on the way halts the run at its tick.
    while (owedS >= TICK_S && !paused.peek()) {
      owedS -= TICK_S;
      const before = live.peek()!;
      const next = tickOnce(open.exercise, before, takeActions());
      runSound.sound(next.pulses.slice(before.pulses.length), before.state);
      keepTick(next);
    }
  };
  frame = requestAnimationFrame(onFrame);
  return () => {
    cancelAnimationFrame(frame);
    runSound.stop();
  };
}
