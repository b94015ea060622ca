import { expect, test } from 'vitest';
import { posesOf, stateAt } from '../../../src/core/debrief/poses';
import { unfairness } from '../../../src/core/desk/unfair';
import type { Action } from '../../../src/core/run/actions';
import { begin } from '../../../src/core/run/begin';
import { climbableM } from '../../../src/core/run/climbing';
import { openExercise } from '../../../src/core/run/exercise';
import { beginLive, tickOnce } from '../../../src/core/run/live';
import { entriesOf, heardMatches, readRecording, recordingOf, writeRecording } from '../../../src/core/run/record';
import { replayRun } from '../../../src/core/run/replay';
import { antennaHeightM, type RunState } from '../../../src/core/run/state';
import { advance, step } from '../../../src/core/run/step';
import { loadScenario } from '../../../src/core/scenario/load';
import { placesPart } from '../../../src/core/technique/placesPart';
import { FLAT, handmadeOutlook, out } from '../technique/handmadeRun';
import { plainScenario } from '../world/fixtureScenario';

const tower = {
  at: [2_000, 2_000] as [number, number],
  lengthM: 20,
  widthM: 6,
  alongDeg: 90,
  heightM: 12,
  walls: 'stone' as const,
  climb: true as const,
};
const scenario = plainScenario({ ground: { sizeM: 8_000, cellM: 10, buildings: [tower] } });
const at = (eM: number, nM: number): RunState => ({ ...begin(scenario), at: { eM, nM } });
const done = (state: RunState, ...actions: readonly Action[]) => actions.reduce((now, action) => step(scenario, now, action), state);
const after = (state: RunState, seconds: number): RunState => {
  let now = state;
  for (let tick = 0; tick < 20 * seconds; tick++) now = advance(scenario, FLAT, now);
  return now;
};

test('a roof is climbed from within 15 m of its wall, along as across, and not where it may not be', () => {
  expect(climbableM(scenario, { eM: 2_024, nM: 2_000 })).toBe(12); // 14 m from the short side
  expect(climbableM(scenario, { eM: 2_026, nM: 2_000 })).toBeNull();
  expect(climbableM(scenario, { eM: 2_000, nM: 2_017 })).toBe(12); // 14 m from the long side
  expect(climbableM(scenario, { eM: 2_000, nM: 2_019 })).toBeNull();
  const { climb: _may, ...shut } = tower;
  expect(climbableM(plainScenario({ ground: { buildings: [shut] } }), { eM: 2_000, nM: 2_000 })).toBeNull();
});

test('up takes 5 s a metre and down 3, the antenna is higher by the roof, and nobody walks meanwhile or up there', () => {
  const up = done(at(2_000, 2_010), { type: 'climb' });
  expect(up.busyUntilTick - up.tick).toBe(12 * 5 * 20);
  expect([antennaHeightM(up.hold), antennaHeightM({ ...up.hold, raised: true })]).toEqual([13.7, 14.4]);
  expect(done(up, { type: 'comeDown' })).toBe(up);
  const there = after(done(up, { type: 'walk', courseDeg: 0, paceMPerS: 1.4 }), 61);
  expect([there.at, there.walkedM]).toEqual([up.at, 0]);
  expect(done(there, { type: 'walkTo', at: { eM: 2_100, nM: 2_100 }, paceMPerS: 1.4 })).toBe(there);
  const down = done(there, { type: 'comeDown' });
  expect([antennaHeightM(down.hold), down.busyUntilTick - down.tick]).toEqual([1.7, 12 * 3 * 20]);
  expect('aloftM' in down.hold).toBe(false);
  expect(after(done(down, { type: 'walk', courseDeg: 0, paceMPerS: 1.4 }), 60).walkedM).toBeGreaterThan(25);
});

test('where nothing may be climbed, and from aboard, nothing is', () => {
  const far = at(3_000, 3_000);
  expect(done(far, { type: 'climb' })).toBe(far);
  expect(done(far, { type: 'comeDown' })).toBe(far);
  const aboard = { ...at(2_000, 2_010), vehicle: { at: { eM: 2_000, nM: 2_010 }, aboard: true } };
  expect(done(aboard, { type: 'climb' })).toBe(aboard);
});

test('behind a bank a tag is heard better from the roof; the run file has the climb, and replays to the same', () => {
  const plan = plainScenario({
    ground: { sizeM: 2_000, powerLines: [], buildings: [{ ...tower, at: [700, 700] }], water: { lakes: 0, streams: 0 } },
    start: { at: [700, 718], facingDeg: 45 },
    tags: [{ ...scenario.tags[0]!, at: [1_700, 1_500] }],
  });
  const exercise = openExercise(plan);
  let live = beginLive(exercise);
  for (let tick = 0; tick < 1_500; tick++) live = tickOnce(exercise, live, tick === 100 ? [{ type: 'climb' }] : []);
  const least = (from: number, to: number) => {
    const found = live.pulses.filter(({ heard }) => heard.atS >= from && heard.atS < to).map(({ truth }) => truth.bestPowerDbm);
    return found.reduce((sum, dbm) => sum + dbm, 0) / found.length;
  };
  expect(least(65, 75)).toBeGreaterThan(least(0, 5) + 3);
  const read = readRecording('run.json', writeRecording(recordingOf(exercise, live, { name: '', by: 'person' })));
  const again = replayRun(exercise, entriesOf(read), read.ticks, live.listener);
  expect(heardMatches(read, again)).toBe(true);
  expect(again.state).toEqual(live.state);
  const poses = posesOf(again.states);
  expect([stateAt(plan, poses, 2).hold.aloftM, stateAt(plan, poses, 70).hold.aloftM]).toEqual([undefined, 12]);
});

test('a reading from a roof is one from the clearest place, whatever the ground at its foot sees', () => {
  const reading = (m: number, aloft: boolean) => ({
    tick: 20 * (200 + m),
    at: out(90, m),
    bearingDeg: 0,
    marked: true,
    ...(aloft ? { aloft } : {}),
  });
  const low = handmadeOutlook(() => 10);
  const never = { atTickM: () => null, isClose: () => false };
  const scoreOf = (aloft: boolean) =>
    placesPart(
      [100, 300, 500].map((m) => reading(m, aloft)),
      low,
      never,
    ).score;
  expect([scoreOf(false), scoreOf(true)]).toEqual([0, 100]);
});

test('a roof without the caution about heights is unfair at the cautions, and "climb" is true or left out', () => {
  const start = { distanceM: 900, walkS: 600, inSight: true, leastGainDb: 10, excessDb: 30, frontOverBackDb: 8, loudestOffDeg: 3 };
  const found = (cautions: typeof scenario.cautions) => unfairness({ ...scenario, cautions }, start, []).map((one) => one.found);
  expect(found(['alone', 'water'])).toContain('a roof may be climbed and the caution about heights is not given');
  expect(found(['heights', 'water']).filter((one) => one.includes('heights'))).toEqual([]);
  const text = JSON.stringify(scenario).replace('"climb":true', '"climb":false');
  expect(() => loadScenario('a.json', text)).toThrow('a.json: ground.buildings.0.climb: ');
});
