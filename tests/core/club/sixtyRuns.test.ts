import { expect, test } from 'vitest';
import { clubReport } from '../../../src/core/club/clubReport';
import { type Collected, collectedTable, makeCollector } from '../../../src/core/club/collect';
import { rowOfReplay, tableExerciseOf } from '../../../src/core/club/rowOf';
import { openExercise } from '../../../src/core/run/exercise';
import { recordingOf, writeRecording } from '../../../src/core/run/record';
import { WALKERS } from '../../../src/core/walkers/catalogue';
import { playWalker } from '../../../src/core/walkers/play';
import { smallField } from './smallField';

/** Each list goes from the better to the worse by how the walkers were made: more of one fault, and nothing else. */
const BY_SKILL = [
  ['steady', 'loud-handed-6', 'loud-handed-12', 'loud-handed-20'],
  ['steady', 'fidgety-1', 'fidgety-2', 'fidgety-3', 'fidgety-4'],
  ['steady', 'weathercock'],
  ['steady', 'rooted'],
] as const;
const IDS = [...new Set(BY_SKILL.flat())];
const TIME_S = 270;

const files: { readonly file: string; readonly text: string; readonly row: Collected }[] = [];
for (const [seed, at] of [
  ['one', [640, 610]],
  ['two', [700, 420]],
  ['three', [480, 720]],
] as const) {
  const exercise = openExercise(smallField(seed, [...at], TIME_S));
  for (const id of IDS) {
    for (const walk of [1, 2]) {
      const walker = WALKERS.find((known) => known.id === id)!;
      const live = playWalker(exercise, walker, walk);
      const recording = recordingOf(exercise, live, { name: id, by: 'walker', practice: walker.practice });
      const row = rowOfReplay(exercise, recording, live);
      const table = { exercises: [tableExerciseOf(exercise.scenario, exercise.digest)], rows: [row] };
      files.push({ file: `${seed}-${id}-${walk}.json`, text: writeRecording(recording), row: { table, faults: [] } });
    }
  }
}
const { table } = collectedTable(files.map(({ row }) => row));
const report = clubReport(table);

test('60 runs by walkers are 60 lines, all checked, and nearly all are long enough to have a place by technique', () => {
  expect(files.length).toBe(60);
  const runs = report.exercises.flatMap((of) => of.runs);
  expect(runs.filter(({ row, counts }) => row.mark === 'checked' && counts).length).toBe(60);
  expect(runs.filter(({ technique }) => technique !== null).length).toBeGreaterThanOrEqual(55);
});

test.each(BY_SKILL)('the table of 60 runs has %s before %s by mean technique, and so on down the list', (...ids) => {
  const means = ids.map((id) => report.season.find(({ name }) => name === id)!.meanTechnique!);
  const sorted = [...means].sort((a, b) => b - a);
  expect(means).toEqual(sorted);
  expect(new Set(means).size).toBe(means.length);
});

test('read from their files and replayed, every fifteenth run gives the very same line', () => {
  const collect = makeCollector();
  for (const { file, text, row } of files.filter((_, i) => i % 15 === 3)) {
    expect(collect(file, JSON.parse(text))).toEqual({ ...row, table: JSON.parse(JSON.stringify(row.table)) });
  }
});

test('a run file takes under 10 kB a minute', () => {
  for (const { file, text } of files) expect(text.length, file).toBeLessThan((TIME_S / 60) * 10_000);
});
