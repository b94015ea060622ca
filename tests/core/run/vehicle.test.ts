import { expect, test } from 'vitest';
import { ANTENNAS } from '../../../src/core/antenna/catalogue';
import { unfairness } from '../../../src/core/desk/unfair';
import type { Action } from '../../../src/core/run/actions';
import { begin } from '../../../src/core/run/begin';
import { openExercise } from '../../../src/core/run/exercise';
import { beginLive, tickOnce } from '../../../src/core/run/live';
import { entriesOf, readRecording, recordingOf, writeRecording } from '../../../src/core/run/record';
import { replayRun } from '../../../src/core/run/replay';
import { groundFaults } from '../../../src/core/run/soundness';
import { onFootM, type RunState } from '../../../src/core/run/state';
import { advance, step } from '../../../src/core/run/step';
import { NOT_FOR_WALKING } from '../../../src/core/scenario/consistency';
import { loadScenario } from '../../../src/core/scenario/load';
import { gradeReplay } from '../../../src/core/technique/grade';
import { distanceM, type MapPoint } from '../../../src/core/units/frames';
import { nearestWay } from '../../../src/core/world/nearestWay';
import type { World } from '../../../src/core/world/world';
import { FLAT, handmadeRun, out } from '../technique/handmadeRun';
import { plainScenario } from '../world/fixtureScenario';

const at = (eM: number, nM: number): MapPoint => ({ eM, nM });
/** A road to the east, a track that leaves it 500 m on to the north, and a path that is not driven. */
const CROSSROADS: World = {
  ...FLAT,
  tracks: [
    { kind: 'road', points: [at(1_000, 1_000), at(3_000, 1_000)] },
    { kind: 'track', points: [at(1_500, 1_008), at(1_500, 1_400), at(1_900, 1_800)] },
    { kind: 'path', points: [at(1_000, 1_000), at(1_000, 2_000)] },
  ],
};
const scenario = plainScenario({
  ground: { sizeM: 8_000 },
  start: { at: [1_000, 1_010], facingDeg: 0 },
  limits: { vehicle: true, timeS: 3_600 },
  kit: { antennas: ['yagi5', 'yagi3'], startAntenna: 'yagi5' },
});
const first = begin(scenario);
const done = (state: RunState, ...actions: readonly Action[]) => actions.reduce((now, action) => step(scenario, now, action), state);
const after = (state: RunState, seconds: number): RunState => {
  let now = state;
  for (let tick = 0; tick < 20 * seconds; tick++) now = advance(scenario, CROSSROADS, now);
  return now;
};
const drive = (courseDeg: number): Action => ({ type: 'walk', courseDeg, paceMPerS: 1 });

test('one begins on foot beside the vehicle, gets in within 10 m of it, and not from farther off', () => {
  expect(first.vehicle).toEqual({ at: at(1_000, 1_010), aboard: false });
  expect(done({ ...first, at: at(1_006, 1_017) }, { type: 'board' })).toMatchObject({ at: at(1_000, 1_010), vehicle: { aboard: true } });
  const far = { ...first, at: at(1_011, 1_010) };
  expect(done(far, { type: 'board' })).toBe(far);
  expect(begin(plainScenario()).vehicle).toBeNull();
});

test('by a course it gets onto the road and drives along it at 9 m a second, and round a bend at 5', () => {
  const road = after(done(first, { type: 'board' }, drive(80)), 60);
  expect(road.at.nM).toBeCloseTo(1_000, 0);
  expect(road.drivenM).toBeGreaterThan(0.95 * 9 * 60);
  expect(road.drivenM).toBeLessThanOrEqual(9 * 60);
  const track = done({ ...first, at: at(1_500, 1_100), vehicle: { at: at(1_500, 1_100), aboard: true } }, drive(10));
  const round = after(track, 120);
  expect(nearestWay(CROSSROADS, round.at)!.distanceM).toBeLessThan(4);
  expect(round.at.nM).toBeGreaterThan(1_550);
  expect(round.drivenM / 120).toBeGreaterThan(4.5);
  expect(round.drivenM / 120).toBeLessThanOrEqual(5);
});

test('to a place it drives by road and track to the point of its ways that is nearest, and stops there', () => {
  const end = after(done(first, { type: 'board' }, { type: 'walkTo', at: at(2_000, 1_790), paceMPerS: 1 }), 300);
  expect(distanceM(end.at, at(1_900, 1_800))).toBeLessThan(1);
  expect([end.legs.paceMPerS, end.blocked]).toEqual([0, false]);
  // 500 m of road, 400 m and 566 m of track, a few metres cut at the corners.
  expect(end.drivenM).toBeGreaterThan(1_400);
  expect(end.drivenM).toBeLessThan(1_500);
});

test('where no way leads on it stops and says so: not over the field, not up a path, not past the end of a road', () => {
  const aboard = { ...first, at: at(1_200, 1_000), vehicle: { at: at(1_200, 1_000), aboard: true } };
  expect(advance(scenario, CROSSROADS, done(aboard, drive(180)))).toMatchObject({ at: aboard.at, blocked: true, legs: { paceMPerS: 0 } });
  const crossing = { ...first, at: at(1_000, 1_000), vehicle: { at: at(1_000, 1_000), aboard: true } };
  expect(after(done(crossing, drive(0)), 1).at).toEqual(crossing.at);
  const end = after(done(aboard, drive(90)), 300);
  expect(end.at.eM).toBeGreaterThan(2_990);
  expect(end.blocked || end.legs.paceMPerS === 0).toBe(true);
});

test('left, it stands where it was left; one comes back to it and drives on', () => {
  const driven = after(done(first, { type: 'board' }, drive(90)), 30);
  const onFoot = after(
    done(driven, { type: 'leave' }, { type: 'changeAntenna', antenna: 'yagi3' }, { type: 'walk', courseDeg: 0, paceMPerS: 1.4 }),
    60,
  );
  expect(onFoot.vehicle).toEqual({ at: driven.at, aboard: false });
  expect(distanceM(onFoot.at, driven.at)).toBeGreaterThan(30);
  expect(onFoot.drivenM).toBe(driven.drivenM);
  expect(onFootM(onFoot)).toBeCloseTo(distanceM(onFoot.at, driven.at), 1);
  expect(done(onFoot, { type: 'board' })).toBe(onFoot);
  const back = after(done(onFoot, { type: 'walkTo', at: driven.at, paceMPerS: 1.4 }), 60);
  expect(after(done(back, { type: 'board' }, drive(90)), 10).drivenM).toBeGreaterThan(driven.drivenM + 70);
});

test('the long antenna is not carried from the vehicle, and is changed within 10 m of it in half a minute', () => {
  const stopped = after(done(first, { type: 'walk', courseDeg: 0, paceMPerS: 1.4 }), 30);
  expect(stopped).toMatchObject({ blocked: false, legs: { paceMPerS: 0 } });
  expect(distanceM(stopped.at, first.at)).toBeGreaterThan(9.8);
  expect(distanceM(stopped.at, first.at)).toBeLessThanOrEqual(10);
  const changed = done(stopped, { type: 'changeAntenna', antenna: 'yagi3' });
  expect([changed.hold.antenna, changed.busyUntilTick - changed.tick]).toEqual(['yagi3', 600]);
  const away = { ...changed, at: at(1_000, 1_100) };
  expect(done(away, { type: 'changeAntenna', antenna: 'yagi5' })).toBe(away);
  const boardedWithIt = done(first, { type: 'board' });
  expect(after(done(boardedWithIt, drive(90)), 10)).toMatchObject({ hold: { antenna: 'yagi5' }, vehicle: { aboard: true } });
});

test('without a vehicle an antenna is changed and carried anywhere, as it always was', () => {
  const free = plainScenario({ kit: { antennas: ['yagi5', 'yagi3'], startAntenna: 'yagi5' } });
  const far = { ...begin(free), at: at(2_000, 2_000) };
  expect(step(free, far, { type: 'changeAntenna', antenna: 'yagi3' }).hold.antenna).toBe('yagi3');
  const walking = step(free, far, { type: 'walk', courseDeg: 0, paceMPerS: 1.4 });
  expect(advance(free, FLAT, walking).at).not.toEqual(far.at);
});

test('what is driven is told apart from what is walked, and a bound of walking does not count it', () => {
  const bound = { ...scenario, limits: { ...scenario.limits, walkM: 100 } };
  const state = { ...first, walkedM: 2_000, drivenM: 1_950 };
  expect(advance(bound, CROSSROADS, state).ending).toBeNull();
  expect(advance(bound, CROSSROADS, { ...state, drivenM: 1_899 }).ending).toBe('walked-out');
  const evidence = handmadeRun(({ stand }) => stand(5), { scenario });
  const { outcome } = gradeReplay({ ...evidence, run: { ...evidence.run, state } }, {});
  expect(outcome).toMatchObject({ walkedM: 50, drivenM: 1_950 });
});

test('aboard, neither following the sound nor keeping a line is asked', () => {
  const legs = (aboard: boolean) => {
    const evidence = handmadeRun(
      ({ mark, walk }) => {
        for (let i = 0; i < 6; i++) {
          mark(0);
          walk(i % 2 === 0 ? 90 : 180, 200);
        }
      },
      { startAt: out(180, 2_000) },
    );
    const states = evidence.run.states.map((state) => ({ ...state, vehicle: { at: state.at, aboard } }));
    return gradeReplay({ ...evidence, run: { ...evidence.run, states } }, {}).habits.walkAndListen.components;
  };
  expect(legs(true)).toMatchObject({ follows: null, keepsLine: null });
  expect(legs(false)['follows']).not.toBeNull();
  expect(legs(false)['keepsLine']).not.toBeNull();
});

const onWorld = openExercise(
  plainScenario({
    ...scenario,
    ground: { ...plainScenario().ground, sizeM: 1_500, tracks: 3, powerLines: [], buildings: [] },
    tags: [{ ...scenario.tags[0]!, at: [700, 900] }],
  }),
);

test('a drive on drawn ground stays on its ways, is in the run file, and replays to the same place', () => {
  const { world } = onWorld;
  const way = world.tracks.find(({ kind }) => kind !== 'path')!;
  const [from, to] = [way.points[3]!, way.points.at(-4)!];
  const exercise = openExercise({ ...onWorld.scenario, start: { at: [Math.round(from.eM), Math.round(from.nM)], facingDeg: 0 } }, world);
  let live = beginLive(exercise);
  const goal = at(Math.round(to.eM), Math.round(to.nM));
  let farthestM = 0;
  for (let tick = 0; tick < 8_000 && (tick < 10 || live.state.legs.paceMPerS > 0); tick++) {
    live = tickOnce(exercise, live, tick === 2 ? [{ type: 'board' }, { type: 'walkTo', at: goal, paceMPerS: 1 }] : []);
    farthestM = Math.max(farthestM, nearestWay(world, live.state.at)!.distanceM);
  }
  expect(distanceM(live.state.at, goal)).toBeLessThan(10);
  // Where two ways meet it cuts the corner; a cell is 10 m.
  expect(farthestM).toBeLessThan(10);
  const read = readRecording('run.json', writeRecording(recordingOf(exercise, live, { name: '', by: 'person' })));
  expect(replayRun(exercise, entriesOf(read), read.ticks, live.listener).state).toEqual(live.state);
});

test('a vehicle off any road is a fault of the ground at its field', () => {
  const faults = groundFaults('a.json', { ...scenario, start: { at: [1_200, 1_100], facingDeg: 0 } }, CROSSROADS);
  expect(faults.map(({ path, found }) => [path, found])).toContainEqual([
    'limits.vehicle',
    'a vehicle, and the nearest road or track is 100 m from the start',
  ]);
  expect(groundFaults('a.json', scenario, CROSSROADS).filter(({ path }) => path === 'limits.vehicle')).toEqual([]);
});

test('a vehicle with nothing to carry from it is refused, a long antenna without one is called unfair', () => {
  const only = plainScenario({ ...scenario, kit: { ...scenario.kit, antennas: ['yagi5'] } });
  expect(() => loadScenario('a.json', JSON.stringify(only))).toThrow(
    'a.json: kit.antennas: a vehicle, and no antenna that can be carried away from it',
  );
  expect(NOT_FOR_WALKING).toEqual(ANTENNAS.filter(({ onFoot }) => !onFoot).map(({ id }) => id));
  const start = { distanceM: 900, walkS: 600, inSight: true, leastGainDb: 10, excessDb: 30, frontOverBackDb: 8, loudestOffDeg: 3 };
  const paths = (vehicle: boolean) =>
    unfairness({ ...scenario, limits: { ...scenario.limits, vehicle } }, start, []).map(({ path }) => path);
  expect(paths(false)).toContain('kit.antennas.0');
  expect(paths(true)).not.toContain('kit.antennas.0');
});

test('a vehicle that drives off with a text takes the long antenna along, and can’t be got into again', () => {
  const inParts: typeof scenario = { ...scenario, stages: [{ after: { kind: 'on-foot' }, text: 'on foot', vehicleGoes: true }] };
  let now = done(first, { type: 'board' }, drive(80));
  for (let tick = 0; tick < 600; tick++) now = advance(inParts, CROSSROADS, now);
  expect([now.vehicle?.aboard, now.hold.antenna, now.stages.length]).toEqual([true, 'yagi5', 0]);
  now = advance(inParts, CROSSROADS, step(inParts, now, { type: 'leave' }));
  expect([now.vehicle, now.hold.antenna, now.stages.length]).toEqual([null, 'yagi3', 1]);
  const tried = step(inParts, step(inParts, now, { type: 'board' }), { type: 'changeAntenna', antenna: 'yagi5' });
  expect([tried.vehicle, tried.hold.antenna]).toEqual([null, 'yagi3']);
});

test('who gets out without having driven has not come to the stage on foot', () => {
  const inParts: typeof scenario = { ...scenario, stages: [{ after: { kind: 'on-foot' }, text: 'on foot', vehicleGoes: true }] };
  const now = advance(inParts, CROSSROADS, step(inParts, step(inParts, first, { type: 'board' }), { type: 'leave' }));
  expect([now.stages.length, now.vehicle?.aboard]).toEqual([0, false]);
});
