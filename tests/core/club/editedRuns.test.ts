import { expect, test } from 'vitest';
import { makeCollector } from '../../../src/core/club/collect';
import type { Action } from '../../../src/core/run/actions';
import { openExercise } from '../../../src/core/run/exercise';
import { beginLive, type Live, tickOnce } from '../../../src/core/run/live';
import { type Recording, recordingOf, writeRecording } from '../../../src/core/run/record';
import { runSealOf } from '../../../src/core/run/runSeal';
import { gradeRun, resultOf } from '../../../src/core/technique/grade';
import { honestRun } from '../../tampering/honestRuns';
import { type Edited, editedFrom, makeJudge, resealed } from '../../tampering/study';
import { smallField } from './smallField';

const exercise = openExercise(smallField('edited', [640, 610], 60));

/** Turns, sets and walks, something every second for half a minute. */
function walked(): Live {
  let live = beginLive(exercise);
  for (let tick = 0; tick < 640; tick++) live = tickOnce(exercise, live, tick % 20 === 7 ? deedAt((tick - 7) / 20) : []);
  return live;
}

function deedAt(second: number): readonly Action[] {
  if (second % 10 === 0) return [{ type: 'walk', courseDeg: 40 + 7 * second, paceMPerS: 1.2 }];
  if (second % 5 === 0) return [{ type: 'mark' }];
  return second % 3 === 0 ? [{ type: 'setGain', gainDb: 60 - second / 2 }] : [{ type: 'turn', toDeg: 13 * second }];
}

const honest = recordingOf(exercise, walked(), { name: 'Rowan', by: 'person', begunAt: '2026-05-12T19:30:05+02:00' });
const graded = { ...honest, result: resultOf(gradeRun(exercise, honest)) };
const original: Recording = { ...graded, seal: runSealOf(graded) };

const edited = editedFrom(original, 3);
const asRead = (run: Recording): unknown => JSON.parse(writeRecording(run));
const collect = makeCollector();
const judge = makeJudge();
const slipped = (runs: readonly Edited[]) =>
  runs.filter(({ run }) => !judge.isFound(run, original.digest)).map(({ part, kind, degree }) => `${part}: ${kind}, degree ${degree}`);

test('the honest run is checked, also under another name', () => {
  expect(judge.isClean(original)).toBe(true);
  expect(judge.isClean({ ...original, name: 'Ash' })).toBe(true);
});

test('102 runs with edited scenario, poses, controls, times, heard or scores, from hardly to grossly, are all found', () => {
  expect(edited.length).toBe(102);
  expect(slipped(edited)).toEqual([]);
}, 120_000);

test('they are all found even where digest and seal were computed anew: by the replay, the grade or as another exercise', () => {
  expect(slipped(edited.map((one) => ({ ...one, run: resealed(one.run) })))).toEqual([]);
}, 240_000);

test('no honest run of 20 drawn hands is accused: keys, mouse and a phone that trembles', () => {
  expect([...Array(20).keys()].filter((index) => !judge.isClean(honestRun(index)))).toEqual([]);
}, 120_000);

test('a run without a seal and one whose aid was hidden are found, and the table says why', () => {
  const { seal: _gone, ...unsealed } = original;
  const hidden = { ...original, aided: true };
  for (const [run, why] of [
    [unsealed, 'no seal'],
    [hidden, 'seal is broken'],
  ] as const) {
    const [row] = collect('run.json', asRead(run as Recording)).table.rows;
    expect([row!.mark, row!.reasons.join(' ')]).toEqual(['does not replay', expect.stringContaining(why)]);
  }
});

test('the reason names the moment from which the replay hears something else', () => {
  const run = structuredClone(original);
  run.heard[20]![2] += 3;
  const [row] = collect('run.json', asRead(run)).table.rows;
  expect(row!.reasons.join(' ')).toMatch(/From 0:20 on the replay hears other pulses/);
});

test('a run of another version is marked so; where it replays it is sound, where not it is not called false', () => {
  const older = { ...original, program: '0.0.9' };
  const sealed = { ...older, seal: runSealOf(older) };
  const [row] = collect('run.json', asRead(sealed)).table.rows;
  expect([row!.mark, row!.sound]).toEqual(['other version', true]);
  const other = { ...sealed, heard: sealed.heard.slice(1) };
  const [lost] = collect('run.json', asRead({ ...other, seal: runSealOf(other) })).table.rows;
  expect([lost!.mark, lost!.sound, lost!.technique]).toEqual(['other version', false, null]);
  expect(lost!.reasons[0]).toContain('check it with that version');
});
