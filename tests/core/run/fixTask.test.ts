import { expect, test } from 'vitest';
import { compareOutcome } from '../../../src/core/club/rank';
import type { TableRow } from '../../../src/core/club/tableRow';
import { begin } from '../../../src/core/run/begin';
import { openExercise } from '../../../src/core/run/exercise';
import { beginLive, tickOnce } from '../../../src/core/run/live';
import { entriesOf, heardMatches, readRecording, recordingOf, writeRecording } from '../../../src/core/run/record';
import { replayRun } from '../../../src/core/run/replay';
import type { Mark, RunState } from '../../../src/core/run/state';
import { advance, step } from '../../../src/core/run/step';
import { loadScenario } from '../../../src/core/scenario/load';
import { gradeReplay } from '../../../src/core/technique/grade';
import { bearingDeg } from '../../../src/core/units/frames';
import { FLAT, handmadeRun, MIDDLE, minutes, out } from '../technique/handmadeRun';
import { plainScenario } from '../world/fixtureScenario';

const tags = [{ ...plainScenario().tags[0]!, at: [4_000, 4_000] as [number, number] }];
const fixTask = plainScenario({ tags, task: { kind: 'fix', keepAwayM: 300 }, ground: { sizeM: 8_000 } });
const state = begin(fixTask);

const markFrom = (alongDeg: number, offDeg: number, struckOut = false): Mark => {
  const at = out(alongDeg, 800);
  return { atTick: 0, at, bearingDeg: bearingDeg(at, MIDDLE) + offDeg, gainDb: 40, attenuatorDb: 0, struckOut };
};
const marked = (notebook: readonly Mark[]): RunState => ({ ...state, notebook });
const declared = (notebook: readonly Mark[]) => step(fixTask, marked(notebook), { type: 'declareFix' });

const outcomeOf = (end: RunState) => {
  const evidence = handmadeRun(({ stand }) => stand(10), { scenario: fixTask });
  return gradeReplay({ ...evidence, run: { ...evidence.run, state: end } }, {}).outcome;
};

test('a fix is declared from two standing bearings or more, and ends the run', () => {
  expect(declared([markFrom(0, 0)]).ending).toBeNull();
  expect(declared([markFrom(0, 0), markFrom(90, 0, true)]).ending).toBeNull();
  const end = declared([markFrom(0, 0), markFrom(45, 20, true), markFrom(90, 0)]);
  expect([end.ending, end.declaredFixes[0]!.bearings]).toEqual(['fixed', [0, 2]]);
});

test('"here" says nothing where a fix is the task, and a fix nothing where a find is', () => {
  const there = { ...state, at: MIDDLE };
  expect(step(fixTask, there, { type: 'declare' })).toBe(there);
  const find = plainScenario();
  const two = { ...begin(find), notebook: [markFrom(0, 0), markFrom(90, 0)] };
  expect(step(find, two, { type: 'declareFix' })).toBe(two);
});

test('the outcome of true lines is a fix on the tag, in its area; of lines 6 degrees off one side, 118 m off', () => {
  expect(outcomeOf(declared([markFrom(0, 0), markFrom(90, 0)]))).toMatchObject({
    found: true,
    ending: 'fixed',
    fix: { offM: 0, within: true },
  });
  // Two lines turned by 6 degrees about stations 800 m off at right angles meet 800 sqrt(2) sin 6 degrees = 118 m from the tag.
  expect(outcomeOf(declared([markFrom(0, 6), markFrom(90, 6)])).fix!.offM).toBe(
    Math.round(800 * Math.SQRT2 * Math.sin((6 * Math.PI) / 180)),
  );
  expect(outcomeOf(declared([markFrom(0, 25), markFrom(90, 25)])).fix).toMatchObject({ within: false });
});

test('lines that give no place are no fix, and none declared is none', () => {
  expect(outcomeOf(declared([markFrom(0, 0), markFrom(1, 0)]))).toMatchObject({ found: false, fix: { offM: null, within: null } });
  expect(outcomeOf(marked([]))).toMatchObject({ found: false, fix: null });
});

test('nearer than the bound ends the run as too near, on the bound does not', () => {
  const at = (m: number) => advance(fixTask, FLAT, { ...state, at: out(90, m) }).ending;
  expect([at(300.5), at(299.5)]).toEqual([null, 'too-near']);
  const free = { ...fixTask, task: { kind: 'fix' as const } };
  expect(advance(free, FLAT, { ...state, at: MIDDLE }).ending).toBeNull();
});

test('a walk across the sound shows neither following nor keeping a line where a fix is the task', () => {
  const across = (scenario: typeof fixTask) =>
    gradeReplay(
      handmadeRun(
        ({ mark, walk }) => {
          for (let i = 0; i < 5; i++) {
            mark(0);
            walk(i % 2 === 0 ? 90 : 180, 200);
          }
        },
        { scenario, startAt: out(180, 2_000) },
      ),
      {},
    ).habits.walkAndListen.components;
  expect(across(fixTask)).toMatchObject({ follows: null, keepsLine: null });
  expect(across({ ...fixTask, task: undefined } as never)['follows']).not.toBeNull();
  expect(across(fixTask)['moves']).not.toBeNull();
  expect(minutes(1)).toBe(60);
});

test('a run with a declared fix reads back from its file and replays to the same end', () => {
  const small = plainScenario({
    ground: { sizeM: 1_000, powerLines: [], buildings: [] },
    start: { at: [300, 300], facingDeg: 10 },
    task: { kind: 'fix' },
    tags: [{ ...tags[0]!, at: [600, 650] }],
  });
  const exercise = openExercise(small);
  const plan: Readonly<Record<number, Parameters<typeof tickOnce>[2]>> = {
    3: [{ type: 'turn', toDeg: 40 }, { type: 'mark' }],
    5: [{ type: 'walkTo', at: { eM: 340, nM: 300 }, paceMPerS: 1.4 }],
    900: [{ type: 'turn', toDeg: 20 }, { type: 'mark' }, { type: 'declareFix' }],
  };
  let live = beginLive(exercise);
  for (let tick = 0; tick < 1_000 && live.state.ending === null; tick++) live = tickOnce(exercise, live, plan[tick] ?? []);
  expect(live.state.ending).toBe('fixed');
  const read = readRecording('run.json', writeRecording(recordingOf(exercise, live, { name: 'Test', by: 'person' })));
  const again = replayRun(exercise, entriesOf(read), read.ticks, { thresholdDb: read.listener.thresholdDb });
  expect(again.state).toEqual(live.state);
  expect(heardMatches(read, again)).toBe(true);
});

test('a club ranks fixes by how far they are off to ten metres, then by time', () => {
  const row = (offM: number, timeS: number) =>
    ({ outcome: { found: true, timeS, declarations: 0, ending: 'fixed', fix: { offM, within: false, areaM: 90 } } }) as TableRow;
  expect(compareOutcome(row(43, 900), row(38, 600))).toBeGreaterThan(0);
  expect(compareOutcome(row(43, 600), row(38, 900))).toBeLessThan(0);
  expect(compareOutcome(row(31, 900), row(49, 600))).toBeLessThan(0);
});

test.each([
  [{ task: { kind: 'fix' }, aids: { ...fixTask.aids, fix: false } }, 'a.json: aids.fix: the task is a fix, and none is granted'],
  [
    { task: { kind: 'fix', keepAwayM: 3_000 }, start: { at: [3_000, 3_000], facingDeg: 0 } },
    'a.json: task.keepAwayM: the start is 1414 m from the tag, nearer than 3000 m',
  ],
  [{ task: { kind: 'fix', keepAwayM: 5 } }, 'a.json: task.keepAwayM: too small'],
  [
    { task: { kind: 'fix' }, tags: [tags[0]!, { ...tags[0]!, name: 'Ram' }] },
    'a.json: task.tag: a fix of one tag, and none of the 2 is named',
  ],
  [
    {
      task: { kind: 'fix', keepAwayM: 100 },
      tags: [{ ...tags[0]!, movement: { kind: 'wanders', withinM: 50, speedMPerS: 1, restS: 10 } }],
    },
    'a.json: task.keepAwayM: a tag that moves may come near by itself',
  ],
])('%j is refused at its field', (change, line) => {
  expect(() => loadScenario('a.json', JSON.stringify({ ...fixTask, ...change }))).toThrow(line);
});
