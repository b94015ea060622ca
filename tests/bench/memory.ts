import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { openExercise } from '../../src/core/run/exercise';
import { drawExercise } from '../../src/core/walkers/drawExercise';
import { playWalker } from '../../src/core/walkers/play';
import { steady } from '../../src/core/walkers/steady';
import type { Figure } from './figure';

const HOUR_S = 3_600;
const TICKS_A_SECOND = 20;

/** Heap in use after everything that nobody holds is gone, MB. */
function heapMb(): number {
  setFlagsFromString('--expose-gc');
  (runInNewContext('gc') as () => void)();
  return process.memoryUsage().heapUsed / 1e6;
}

/** What an hour of runs keeps as a debrief holds them, with the state at every tick: walks one after another on one ground, none let go. */
export function figures(): Figure[] {
  const exercise = openExercise(drawExercise(1_001, 'crossing', 3));
  const first = playWalker(exercise, steady, 0); // brings the waves of the ground, which stay
  const beforeMb = heapMb();
  const kept: unknown[] = [];
  let seconds = 0;
  for (let seed = 1; seconds < HOUR_S; seed++) {
    const walk = playWalker(exercise, steady, seed);
    seconds += walk.states.length / TICKS_A_SECOND;
    kept.push(walk);
  }
  const grownMb = heapMb() - beforeMb;
  if (kept.length === 0 || !first) throw new Error('no walk was kept');
  return [{ name: 'heap that an hour of runs keeps', unit: 'MB', value: (grownMb * HOUR_S) / seconds, goal: 64 }];
}
