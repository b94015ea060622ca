import { openExercise } from '../../src/core/run/exercise';
import { type Recording, recordingOf, writeRecording } from '../../src/core/run/record';
import { runSealOf } from '../../src/core/run/runSeal';
import { gradeRun, resultOf } from '../../src/core/technique/grade';
import { WALKERS } from '../../src/core/walkers/catalogue';
import { playWalker } from '../../src/core/walkers/play';
import { smallField } from '../core/club/smallField';

export type RunFile = { readonly name: string; readonly text: string };

const PEOPLE = [
  ['Rowan', 'steady', 'one', '2026-05-12T19:30:05+02:00'],
  ['Hazel', 'loud-handed-6', 'one', '2026-05-12T19:31:10+02:00'],
  ['Alder', 'loud-handed-20', 'one', '2026-05-12T19:30:44+02:00'],
  ['Bryony <b>', 'fidgety-3', 'one', '2026-05-12T19:29:59+02:00'],
  ['=Sorrel', 'rooted', 'one', '2026-05-12T19:33:00+02:00'],
  ['Rowan', 'steady', 'two', '2026-05-19T19:30:00+02:00'],
] as const;

/** Six runs by walkers under people's names: five of one exercise on one evening, one of another a week later. */
export function clubRuns(): readonly RunFile[] {
  const exercises = new Map(
    (
      [
        ['one', [640, 610]],
        ['two', [700, 420]],
      ] as const
    ).map(([seed, at]) => [seed, openExercise(smallField(seed, [...at], 270))]),
  );
  return PEOPLE.map(([name, id, seed, begunAt]) => {
    const exercise = exercises.get(seed)!;
    const live = playWalker(exercise, WALKERS.find((walker) => walker.id === id)!, 1);
    const run = recordingOf(exercise, live, { name, by: 'person', begunAt, aided: id === 'loud-handed-6' });
    const graded = { ...run, result: resultOf(gradeRun(exercise, run)) };
    return { name: `${seed}-${id}.json`, text: writeRecording({ ...graded, seal: runSealOf(graded) }) };
  });
}

/** The same file with another technique written in. */
export function tampered({ name, text }: RunFile): RunFile {
  const run = JSON.parse(text) as Recording;
  return { name: `changed-${name}`, text: writeRecording({ ...run, result: { ...run.result!, technique: 99 } }) };
}
