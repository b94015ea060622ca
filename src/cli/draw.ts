import { writeFileSync } from 'node:fs';
import { LESSONS } from '../core/scenario/schema';
import { drawRehearsed, MOST_REHEARSALS } from '../core/walkers/drawRehearsed';
import { numberFrom, oneOf, UsageError } from './inputs';

type Options = { readonly seed?: unknown; readonly lesson?: unknown; readonly level?: unknown; readonly out?: unknown };

/** Draws an exercise and hands it out once the steady walker has found the tag in it. */
export function drawCommand(options: Options): object {
  const seed = numberFrom('seed', options.seed, 0, 2 ** 31);
  const lesson = oneOf('lesson', options.lesson, LESSONS);
  const level = numberFrom('level', options.level, 1, 5);
  if (!Number.isInteger(seed) || !Number.isInteger(level)) throw new UsageError('--seed and --level want whole numbers');
  if (typeof options.out !== 'string') throw new UsageError('--out wants the name of a scenario file');
  const drawn = drawRehearsed(seed, lesson, level, undefined, ({ title }, { found, timeS }, number) => {
    if (!found) process.stderr.write(`rehearsal ${number}: ${title} was not found in ${timeS} s, another is drawn\n`);
  });
  if (drawn) {
    const { scenario, rehearsals, rehearsedS } = drawn;
    writeFileSync(options.out, `${JSON.stringify(scenario, null, 2)}\n`);
    return { file: options.out, title: scenario.title, lesson, level, seed: scenario.seed, rehearsals, rehearsedS };
  }
  throw new UsageError(`no exercise of ${MOST_REHEARSALS} drawn from seed ${seed} could be rehearsed; give another --seed`);
}
