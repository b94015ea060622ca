import { beforeAll, expect, test } from 'vitest';
import type { Action } from '../../../src/core/run/actions';
import { begin } from '../../../src/core/run/begin';
import { type Exercise, openExercise } from '../../../src/core/run/exercise';
import { beginLive, type Live, tickOnce } from '../../../src/core/run/live';
import { entriesOf, heardMatches, readRecording, recordingOf, writeRecording } from '../../../src/core/run/record';
import { replayRun } from '../../../src/core/run/replay';
import { runSealOf } from '../../../src/core/run/runSeal';
import { advance, step } from '../../../src/core/run/step';
import { tagAt } from '../../../src/core/run/tagMotion';
import { pulsesDue, pulseTimeS } from '../../../src/core/run/timetable';
import { InputFaults } from '../../../src/core/scenario/faults';
import { bearingDeg, distanceM } from '../../../src/core/units/frames';
import { plainScenario } from '../world/fixtureScenario';

const small = plainScenario({
  ground: {
    sizeM: 1_000,
    cellM: 10,
    relief: { style: 'smooth', strengthM: 20, roughness: 0.2, baseHeightM: 100 },
    water: { lakes: 0, streams: 0 },
    powerLines: [],
    buildings: [],
  },
  start: { at: [300, 300], facingDeg: 10 },
  tags: [{ ...plainScenario().tags[0]!, at: [600, 650] }],
});
let exercise: Exercise;
beforeAll(() => {
  exercise = openExercise(small);
});

function played(ticks: number, plan: Readonly<Record<number, readonly Action[]>>): Live {
  let live = beginLive(exercise);
  for (let tick = 0; tick < ticks && live.state.ending === null; tick++) live = tickOnce(exercise, live, plan[tick] ?? []);
  return live;
}

const PLAN: Readonly<Record<number, readonly Action[]>> = {
  3: [{ type: 'spin', degPerS: 40 }],
  90: [
    { type: 'spin', degPerS: 0 },
    { type: 'setGain', gainDb: 30 },
  ],
  100: [{ type: 'walkTo', at: { eM: 340, nM: 360 }, paceMPerS: 1.4 }],
  300: [{ type: 'turn', toDeg: 41.26 }, { type: 'mark' }],
};

test('a knob stops at its ends, a heading wraps, an attenuator has four steps', () => {
  const state = begin(small);
  const doing = (action: Action) => step(small, state, action);
  expect(doing({ type: 'setGain', gainDb: 120 }).controls.gainDb).toBe(90);
  expect(doing({ type: 'setGain', gainDb: -3 }).controls.gainDb).toBe(0);
  expect(doing({ type: 'setAttenuator', attenuatorDb: 15 }).controls.attenuatorDb).toBe(0);
  expect(doing({ type: 'setAttenuator', attenuatorDb: 20 }).controls.attenuatorDb).toBe(20);
  expect(doing({ type: 'turn', toDeg: -10 }).hold.headingDeg).toBe(350);
  expect(doing({ type: 'roll', toDeg: 140 }).hold.rollDeg).toBe(90);
});

test('a walk to a place ends there, and its length is counted', () => {
  const live = played(1_500, { 0: [{ type: 'walkTo', at: { eM: 340, nM: 360 }, paceMPerS: 1.4 }] });
  expect(distanceM(live.state.at, { eM: 340, nM: 360 })).toBeLessThan(0.01);
  expect(live.state.walkedM).toBeGreaterThan(72 - 0.5);
  expect(live.state.walkedM).toBeLessThan(72.6);
  expect(live.state.legs.paceMPerS).toBe(0);
});

test('walking is apart from turning: a course of 90 degrees goes east whatever the antenna does', () => {
  const live = played(200, {
    0: [
      { type: 'walk', courseDeg: 90, paceMPerS: 1 },
      { type: 'spin', degPerS: 50 },
    ],
  });
  expect(bearingDeg({ eM: 300, nM: 300 }, live.state.at)).toBeCloseTo(90, 1);
});

test('the map’s edge stops the legs and says so', () => {
  const live = played(4_000, { 0: [{ type: 'walk', courseDeg: 270, paceMPerS: 4 }] });
  expect(live.state.at.eM).toBeGreaterThanOrEqual(0);
  expect(live.state.legs.paceMPerS).toBe(0);
});

test('"here" at the tag ends the run as found, elsewhere it is written down', () => {
  const state = begin(small);
  const wrong = step(small, state, { type: 'declare' });
  expect([wrong.ending, wrong.declarations.length, wrong.declarations[0]!.right]).toEqual([null, 1, false]);
  const there = step(small, { ...state, at: { eM: 605, nM: 650 } }, { type: 'declare' });
  expect([there.ending, there.declarations[0]!.offM]).toEqual(['found', 5]);
  expect(step(small, there, { type: 'setGain', gainDb: 5 })).toBe(there);
});

test('time runs out at its limit', () => {
  const end = advance(small, exercise.world, { ...begin(small), tick: small.limits.timeS * 20 - 1 });
  expect(end.ending).toBe('out-of-time');
});

test('pulses come once a period, each in exactly one tick', () => {
  const due = Array.from({ length: 20 * 61 }, (_, tick) => pulsesDue(small, tick)).flat();
  expect(due.length).toBeGreaterThanOrEqual(60);
  expect(due.length).toBeLessThanOrEqual(62);
  expect(due.map(({ number }) => number)).toEqual(due.map((_, i) => i));
  expect(due.map(({ atS }) => atS)).toEqual(due.map((_, i) => pulseTimeS(small, 0, i)));
});

test('the same actions give the same run, pulse by pulse', () => {
  const live = played(400, PLAN);
  const run = replayRun(exercise, live.log, live.state.tick, live.listener);
  expect(run.pulses).toEqual(live.pulses);
  expect(run.state).toEqual(live.state);
  expect(run.states.every((state, tick) => state.tick === tick)).toBe(true);
});

test('a run file reads back as it was written, and its replay matches', () => {
  const live = played(400, PLAN);
  const recording = recordingOf(exercise, live, { name: 'Test', by: 'person' });
  const read = readRecording('run.json', writeRecording(recording));
  expect(read).toEqual(JSON.parse(JSON.stringify(recording)));
  expect(heardMatches(read, replayRun(exercise, entriesOf(read), read.ticks, read.listener))).toBe(true);
});

test('the seal of a run file breaks with any change but that of its name', () => {
  const about = { name: 'Test', by: 'person', begunAt: '2026-05-12T19:30:05+02:00' } as const;
  const recording = recordingOf(exercise, played(60, PLAN), about);
  const read = readRecording('run.json', writeRecording(recording));
  expect(read.seal).toBe(runSealOf(read));
  expect(runSealOf({ ...read, name: 'Rowan' })).toBe(read.seal);
  for (const edit of [{ aided: true }, { begunAt: '2026-05-13T19:30:05+02:00' }, { ticks: 61 }, { program: '9' }, { log: [] }])
    expect(runSealOf({ ...read, ...edit })).not.toBe(read.seal);
});

test.each(['yesterday', '2026-13-40T00:00:00Z', '2026-05-12'])('a run begun at "%s" is refused at its path', (begunAt) => {
  const recording = recordingOf(exercise, played(60, {}), { name: 'Test', by: 'person' });
  expect(() => readRecording('run.json', JSON.stringify({ ...recording, begunAt }))).toThrow(/run\.json: begunAt/);
});

test('a place with more known of it than its coordinates is written as a place', () => {
  const known = { eM: 340, nM: 360, seconds: 55 };
  const live = played(20, { 2: [{ type: 'walkTo', at: known, paceMPerS: 1 }] });
  const text = writeRecording(recordingOf(exercise, live, { name: 'Test', by: 'walker' }));
  expect(readRecording('run.json', text).log).toEqual([[2, { type: 'walkTo', at: { eM: 340, nM: 360 }, paceMPerS: 1 }]]);
});

type Run = ReturnType<typeof recordingOf>;

test.each([
  [
    'a louder pulse',
    (r: Run) => {
      r.heard[7]![2] += 0.5;
    },
  ],
  [
    'a pulse fewer',
    (r: Run) => {
      r.heard.pop();
    },
  ],
  [
    'another gain',
    (r: Run) => {
      r.log[2]![1] = { type: 'setGain', gainDb: 36 };
    },
  ],
  [
    'a longer run',
    (r: Run) => {
      r.ticks += 40;
    },
  ],
])('%s is found by replay', (_what, edit) => {
  const recording = JSON.parse(JSON.stringify(recordingOf(exercise, played(400, PLAN), { name: 'Test', by: 'person' })));
  edit(recording);
  expect(heardMatches(recording, replayRun(exercise, entriesOf(recording), recording.ticks, recording.listener))).toBe(false);
});

test('a run whose scenario was edited is refused with the digest as its path', () => {
  const recording = recordingOf(exercise, played(60, {}), { name: 'Test', by: 'person' });
  const edited = JSON.stringify({ ...recording, scenario: { ...recording.scenario, seed: 'other' } });
  expect(() => readRecording('run.json', edited)).toThrow(InputFaults);
  expect(() => readRecording('run.json', edited)).toThrow(/run\.json: digest/);
});

test('what is heard does not say where the tag is', () => {
  const { heard } = played(100, {}).pulses[0]!;
  expect(Object.keys(heard).sort()).toEqual(['atS', 'audible', 'durationS', 'flatOut', 'levelDb', 'loudnessDb', 'pitchHz', 'sUnits']);
});

test('a tag that wanders stays within its circle and moves no faster than its pace', () => {
  const tags = [{ ...small.tags[0]!, movement: { kind: 'wanders', withinM: 120, speedMPerS: 0.8, restS: 30 } as const }];
  const scenario = { ...small, tags };
  let [before, moved] = [tagAt(scenario, 0, 0), 0];
  for (let s = 1; s < 2_000; s++) {
    const now = tagAt(scenario, 0, s);
    const stepM = distanceM(before, now);
    expect(stepM).toBeLessThan(0.801);
    expect(distanceM(now, { eM: 600, nM: 650 })).toBeLessThan(120.1);
    moved += stepM;
    before = now;
  }
  expect(moved).toBeGreaterThan(300);
});

test('a tag on a path comes to its last point and stays', () => {
  const movement = {
    kind: 'path',
    points: [
      [600, 750],
      [700, 750],
    ],
    speedMPerS: 1,
    pauseS: 10,
  } as { kind: 'path'; points: [number, number][]; speedMPerS: number; pauseS: number };
  const scenario = { ...small, tags: [{ ...small.tags[0]!, movement }] };
  expect(tagAt(scenario, 0, 5)).toEqual({ eM: 600, nM: 650 });
  expect(tagAt(scenario, 0, 60).nM).toBeCloseTo(700, 6);
  expect(tagAt(scenario, 0, 5_000)).toEqual({ eM: 700, nM: 750 });
});
