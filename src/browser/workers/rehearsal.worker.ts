import { atStart } from '../../core/desk/atStart';
import { rehearsedWalk } from '../../core/desk/rehearsedWalk';
import { type Exercise, openExercise } from '../../core/run/exercise';
import { TICKS_PER_S } from '../../core/run/state';
import { boundS } from '../../core/walkers/validityRun';
import type { FromRehearsal, ToRehearsal } from './rehearsalMessages';

const TELL_EVERY_TICKS = 400;
const tell = (message: FromRehearsal) => postMessage(message);
let exercise: Exercise | null = null;
let usualS = 0;

/** Lets the steady walker do one exercise again and again, each time with other draws of its ear. */
addEventListener('message', ({ data }: MessageEvent<ToRehearsal>) => {
  if (data.kind === 'open') {
    exercise = openExercise(data.scenario, data.world);
    usualS = Math.min(boundS(exercise), data.scenario.limits.timeS);
  } else if (data.kind === 'start') tell({ kind: 'start', start: atStart(exercise!) });
  else {
    const walk = rehearsedWalk(exercise!, data.seed, ({ tick }) => {
      if (tick % TELL_EVERY_TICKS === 0) tell({ kind: 'walking', timeS: tick / TICKS_PER_S, usualS });
    });
    tell({ kind: 'walked', walk });
  }
});
