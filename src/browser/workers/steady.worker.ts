import { debriefOf } from '../../core/debrief/debriefing';
import { openExercise } from '../../core/run/exercise';
import { TICKS_PER_S } from '../../core/run/state';
import { playWalker } from '../../core/walkers/play';
import { steady } from '../../core/walkers/steady';
import { boundS } from '../../core/walkers/validityRun';
import type { FromSteady, ToSteady } from './steadyMessages';

const TELL_EVERY_TICKS = 400;
const tell = (message: FromSteady) => postMessage(message);

/** Lets the built-in expert do an exercise from sound and map alone, and goes through its run as through the learner's. */
addEventListener('message', ({ data }: MessageEvent<ToSteady>) => {
  const exercise = openExercise(data.scenario, data.world);
  const usualS = Math.min(boundS(exercise), data.scenario.limits.timeS);
  const run = playWalker(exercise, steady, 1, { thresholdDb: 0 }, ({ tick, walkedM }) => {
    if (tick % TELL_EVERY_TICKS === 0) tell({ kind: 'walking', timeS: tick / TICKS_PER_S, walkedM, usualS });
  });
  tell({ kind: 'walked', debriefing: debriefOf({ exercise, run }, { practice: steady.practice }) });
});
