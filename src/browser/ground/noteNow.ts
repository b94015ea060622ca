import { computed } from '@preact/signals';
import type { HeardPulse } from '../../core/ear/hear';
import { live, wholeSecond } from '../currentRun';

/** The slowest tag beeps every three seconds: a note stands this long after its beep. */
const STANDS_S = 4;

/** The loudest beep of the last seconds that was heard: of several tags the one that the dial brings out. */
export const noteNow = computed<HeardPulse | null>(() => {
  const pulses = live.value?.pulses ?? [];
  let loudest: HeardPulse | null = null;
  for (let i = pulses.length - 1; i >= 0; i--) {
    const { heard } = pulses[i]!;
    if (heard.atS < wholeSecond.value - STANDS_S) break;
    if (heard.audible && (loudest === null || heard.loudnessDb > loudest.loudnessDb)) loudest = heard;
  }
  return loudest;
});
