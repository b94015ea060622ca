import { writeFileSync } from 'node:fs';
import { openExercise } from '../core/run/exercise';
import { timeS } from '../core/run/state';
import { LESSONS, type Scenario } from '../core/scenario/schema';
import { drawExercise } from '../core/walkers/drawExercise';
import { playWalker } from '../core/walkers/play';
import { steady } from '../core/walkers/steady';
import { numberFrom, oneOf, UsageError } from './inputs';

/** Exercises rehearsed before the draw is given up; each has a seed of its own, made of the one asked for. */
const MOST_REHEARSALS = 6;
const SEED_STEP = 1_000_003;

type Options = { readonly seed?: unknown; readonly lesson?: unknown; readonly level?: unknown; readonly out?: unknown };

/** Draws an exercise and hands it out once the steady walker has found the tag in it. */
export function drawCommand(options: Options): object {
  const seed = numberFrom('seed', options.seed, 0, 2 ** 31);
  const lesson = oneOf('lesson', options.lesson, LESSONS);
  const level = numberFrom('level', options.level, 1, 5);
  if (!Number.isInteger(seed) || !Number.isInteger(level)) throw new UsageError('--seed and --level want whole numbers');
  if (typeof options.out !== 'string') throw new UsageError('--out wants the name of a scenario file');
  for (let rehearsal = 1; rehearsal <= MOST_REHEARSALS; rehearsal++) {
    const scenario = drawExercise(seed + (rehearsal - 1) * SEED_STEP, lesson, level);
    const walk = rehearsed(scenario);
    if (!walk.found) {
      process.stderr.write(`rehearsal ${rehearsal}: ${scenario.title} was not found in ${walk.timeS} s, another is drawn\n`);
      continue;
    }
    writeFileSync(options.out, `${JSON.stringify(scenario, null, 2)}\n`);
    return { file: options.out, title: scenario.title, lesson, level, seed: scenario.seed, rehearsals: rehearsal, rehearsedS: walk.timeS };
  }
  throw new UsageError(`no exercise of ${MOST_REHEARSALS} drawn from seed ${seed} could be rehearsed; give another --seed`);
}

function rehearsed(scenario: Scenario): { readonly found: boolean; readonly timeS: number } {
  const { state } = playWalker(openExercise(scenario), steady, 1);
  return { found: state.ending === 'found', timeS: Math.round(timeS(state)) };
}
