import { writeFileSync } from 'node:fs';
import { openExercise } from '../core/run/exercise';
import { recordingOf, writeRecording } from '../core/run/record';
import { timeS } from '../core/run/state';
import { gradeReplay, resultOf } from '../core/technique/grade';
import { WALKERS } from '../core/walkers/catalogue';
import { playWalker } from '../core/walkers/play';
import { numberFrom, oneOf, scenarioOf, UsageError } from './inputs';

/** Lets a walker do an exercise and writes its run file. */
export function walkCommand(file: string, options: { as?: unknown; seed?: unknown; out?: unknown }): object {
  const id = oneOf(
    'as',
    options.as,
    WALKERS.map((known) => known.id),
  );
  const seed = options.seed === undefined ? 1 : numberFrom('seed', options.seed, 0, 2 ** 31);
  if (typeof options.out !== 'string') throw new UsageError('--out wants the name of a run file');
  const exercise = openExercise(scenarioOf(file));
  const walker = WALKERS.find((known) => known.id === id)!;
  const live = playWalker(exercise, walker, seed);
  const result = resultOf(gradeReplay({ exercise, run: live }, { practice: walker.practice }));
  writeFileSync(options.out, writeRecording(recordingOf(exercise, live, { name: id, by: 'walker', practice: walker.practice, result })));
  return {
    file: options.out,
    scenario: exercise.scenario.title,
    walker: id,
    seed,
    ending: live.state.ending,
    found: live.state.ending === 'found',
    timeS: timeS(live.state),
    walkedM: Math.round(live.state.walkedM),
    bearings: live.state.notebook.length,
  };
}
