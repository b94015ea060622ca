import { readFileSync } from 'node:fs';
import { misleads } from '../../src/core/desk/misleads';
import { rehearsedWalk } from '../../src/core/desk/rehearsedWalk';
import { type Exercise, openExercise } from '../../src/core/run/exercise';
import { isDone } from '../../src/core/run/state';
import { loadScenario } from '../../src/core/scenario/load';
import type { Walked } from './order';

/** One walk that is asked of a process: an exercise by its file, and the draw of the walker's ear. */
export type Asked = { readonly file: string; readonly digest: string; readonly seed: number };

let open: { readonly file: string; readonly exercise: Exercise } | null = null;

/** The ground of an exercise is made once for all walks that come one after the other. */
function walked({ file, digest, seed }: Asked): Walked {
  open = open?.file === file ? open : { file, exercise: openExercise(loadScenario(file, readFileSync(file, 'utf8'))) };
  const { ending, timeS, bearings } = rehearsedWalk(open.exercise, seed);
  const errorsDeg = bearings.map(({ errorDeg }) => Math.round(10 * Math.abs(errorDeg)) / 10);
  return { file, digest, seed, found: isDone(ending), timeS, errorsDeg, misleading: bearings.filter(misleads).length };
}

if (process.send && process.env['FAINTWARD_LIBRARY_PART'] === '1') {
  process.on('message', (asked: Asked | 'stop') => {
    if (asked === 'stop') process.disconnect();
    else process.send!(walked(asked));
  });
  process.send('ready');
}
