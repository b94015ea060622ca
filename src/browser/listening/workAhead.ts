import { computed, effect, signal } from '@preact/signals';
import { otherRing, settings, shown, still } from './roomState';

/** Work is done this long at a stretch, ms: a gesture or a beep never waits longer for it. */
const STRETCH_MS = 10;
/** The ring is painted first. */
const AFTER_MS = 30;

/** What stands beside the ring on this page has been worked out. */
export const drawn = signal(false);

/** Chart and picture at the present settings. */
export const drawings = computed(() => ({ chart: shown.value.chart(still.value), picture: shown.value.picture(still.value) }));

/** Works out a newly opened page's drawings in pieces, once its ring stands. @returns stops */
export function workAhead(): () => void {
  let timer = 0;
  const stop = effect(() => {
    const demonstration = shown.value;
    clearTimeout(timer);
    drawn.value = false;
    const pieces = [() => otherRing.peek(), ...(demonstration.ahead?.(settings.peek()) ?? []), () => drawings.peek()];
    const work = () => {
      const untilMs = performance.now() + STRETCH_MS;
      do pieces.shift()?.();
      while (pieces.length > 0 && performance.now() < untilMs);
      if (pieces.length > 0) timer = window.setTimeout(work);
      else drawn.value = true;
    };
    timer = window.setTimeout(work, AFTER_MS);
  });
  return () => {
    clearTimeout(timer);
    stop();
  };
}
