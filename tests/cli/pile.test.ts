import { expect, test } from 'vitest';
import { openExercise } from '../../src/core/run/exercise';
import { beginLive, tickOnce } from '../../src/core/run/live';
import { recordingOf, writeRecording } from '../../src/core/run/record';
import { smallField } from '../core/club/smallField';
import { guideCommands, isHere, pileFolder, ranBlock, sharerOf } from '../pile/guideCommands';
import { cli } from './runCli';

const exercise = openExercise(smallField('pile', [640, 610], 60));
/** Two seconds of a turn. */
function runOf(name: string, headingDeg: number): string {
  let live = beginLive(exercise);
  for (let tick = 0; tick < 40; tick++) live = tickOnce(exercise, live, tick === 10 ? [{ type: 'turn', toDeg: headingDeg }] : []);
  return writeRecording(recordingOf(exercise, live, { name, by: 'person' }));
}
const NAMES = ['Rowan', 'Ash', 'Hazel', 'Alder', 'Sorrel'];
const RUNS = NAMES.map((name, i) => runOf(name, 40 * i));
const here = guideCommands().filter((block) => isHere(sharerOf(block)));

test('the guide has a way for GNU parallel and one for machines without it, which can be tried here', () => {
  expect(guideCommands().map(sharerOf)).toEqual(['parallel', 'xargs']);
  expect(here.map(sharerOf)).toContain('xargs');
});

test.each(here.map((block) => [sharerOf(block), block]))(
  'five runs in shares of two and one by the guide’s %s on two workers: each answer in the line of its run',
  (_sharer, block) => {
    const folder = pileFolder('pile-of-five', RUNS);
    const { grades, checks, err } = ranBlock(folder, block.replaceAll('100', '2'));
    expect(err).not.toMatch(/Mend|rror/);
    expect(grades.map(({ name, replayMatches }) => [name, replayMatches])).toEqual(NAMES.map((name) => [name, true]));
    expect(checks.map(({ kind, faults }) => [kind, faults])).toEqual(NAMES.map(() => ['run', []]));
  },
  120_000,
);

test.each(['grade', 'check'])(
  '%s: a line that is wrong is answered by its faults in its place, and costs the others nothing',
  (command) => {
    const pile = `${RUNS[0]}no run\n{"format":"faintward-run","version":1}\n${RUNS[1]}`;
    const ran = cli([command, '-', '--lines', '--json'], pile);
    expect(ran.code).toBe(1);
    const answers = ran.out.split('\n').filter(Boolean);
    const faulty = answers.map((line) => (JSON.parse(line) as { faults?: readonly { file: string }[] }).faults?.[0]?.file ?? null);
    expect(faulty).toEqual([null, '-:2', '-:3', null]);
    expect(ran.err).toMatch(/^-:2: whole file: a line that is not a JSON document\. Mend: .+\n-:3: /);
  },
);

test.each([
  ['grade', 'replayMatches'],
  ['check', 'kind'],
])('%s: one run alone is a line by --lines', (command, key) => {
  const ran = cli([command, '-', '--lines', '--json'], RUNS[0]);
  expect([ran.code, ran.err]).toEqual([0, '']);
  expect(Object.keys(JSON.parse(ran.out) as object)).toContain(key);
});
