import { expect, test } from 'vitest';
import { makeCollector } from '../../../src/core/club/collect';
import { randomFor } from '../../../src/core/random/draw';
import type { Action } from '../../../src/core/run/actions';
import { openExercise } from '../../../src/core/run/exercise';
import { beginLive, type Live, tickOnce } from '../../../src/core/run/live';
import { type Recording, recordingOf, writeRecording } from '../../../src/core/run/record';
import { runSealOf } from '../../../src/core/run/runSeal';
import { digestOf } from '../../../src/core/scenario/seal';
import { gradeRun, resultOf } from '../../../src/core/technique/grade';
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

type Open = { -readonly [K in keyof Recording]: Recording[K] };
const pick = <T>(items: readonly T[], random: () => number): T => items[Math.floor(random() * items.length)]!;
const entries = (run: Open, ...types: readonly Action['type'][]) => run.log.filter(([, { type }]) => types.includes(type));

/** One way to edit each part of a run file; the numbers are drawn. */
const EDITS: Readonly<Record<string, (run: Open, random: () => number) => void>> = {
  scenario(run, random) {
    const { scenario } = run;
    const [tag] = scenario.tags;
    const at: [number, number] = [640 - Math.round(1 + 90 * random()), 610];
    run.scenario = pick<Recording['scenario']>(
      [
        { ...scenario, tags: [{ ...tag!, at }] },
        { ...scenario, tags: [{ ...tag!, eirpDbm: tag!.eirpDbm + 1 + 5 * random() }] },
        { ...scenario, kit: { ...scenario.kit, noiseFigureDb: scenario.kit.noiseFigureDb + 1 + random() } },
        { ...scenario, limits: { ...scenario.limits, findWithinM: Math.round(13 + 40 * random()) } },
        { ...scenario, seed: `other-${random()}` },
      ],
      random,
    );
  },
  poses(run, random) {
    const [, action] = pick(entries(run, 'turn', 'walk'), random);
    if (action.type === 'turn') action.toDeg += 20 + 100 * random();
    if (action.type === 'walk') action.courseDeg += 10 + 100 * random();
  },
  controls(run, random) {
    const [, action] = pick(entries(run, 'setGain'), random);
    if (action.type === 'setGain') action.gainDb -= 1 + 20 * random();
  },
  times(run, random) {
    // A whole pulse later, so that at least one is heard with the hand where it was before.
    const entry = pick(entries(run, 'turn', 'setGain').slice(0, -3), random);
    entry[0] += 20 + Math.floor(20 * random());
    run.log.sort(([a], [b]) => a - b);
  },
  heard(run, random) {
    const row = pick(run.heard, random);
    row[2] += 0.1 + random();
    row[3] += 0.1 + random();
  },
  scores(run, random) {
    run.result = { ...run.result!, setThenSweep: 100 * random(), technique: 60 + 40 * random() };
  },
};

const kinds = Object.keys(EDITS);
const edited = [...Array(100).keys()].map((i) => {
  const run = structuredClone(original) as Open;
  EDITS[kinds[i % kinds.length]!]!(run, randomFor(`edit-${i}`, 'test'));
  return { what: `${i}: ${kinds[i % kinds.length]}`, run };
});
const asRead = (run: Recording): unknown => JSON.parse(writeRecording(run));
const collect = makeCollector();

/** Nothing is found where the run stands as a checked line of the honest exercise. */
function found(run: Recording): boolean {
  const { table, faults } = collect('run.json', asRead(run));
  const [row] = table.rows;
  return faults.length > 0 || row!.mark !== 'checked' || row!.exercise !== original.digest;
}

test('the honest run is checked, also under another name', () => {
  expect(found(original)).toBe(false);
  expect(found({ ...original, name: 'Ash' })).toBe(false);
});

test('100 runs with edited scenario, poses, controls, times, heard or scores are all found', () => {
  expect(edited.filter(({ run }) => !found(run)).map(({ what }) => what)).toEqual([]);
}, 120_000);

test('they are all found even where digest and seal were computed anew: by the replay, the grade or as another exercise', () => {
  const resealed = edited.map(({ what, run }) => {
    const digested = { ...run, digest: digestOf(run.scenario) };
    return { what, run: { ...digested, seal: runSealOf(digested) } };
  });
  expect(resealed.filter(({ run }) => !found(run)).map(({ what }) => what)).toEqual([]);
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
  const run = structuredClone(original) as Open;
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
