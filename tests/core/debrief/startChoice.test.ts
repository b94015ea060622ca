import { expect, test } from 'vitest';
import { judgeStart, snappedStart, startPlaces } from '../../../src/core/debrief/startChoice';
import { begin } from '../../../src/core/run/begin';
import { step } from '../../../src/core/run/step';
import type { MapPoint } from '../../../src/core/units/frames';
import { quickestWalk, walkSecondsTo } from '../../../src/core/world/reachable';
import { COVER, type Track, type World } from '../../../src/core/world/world';
import { plainScenario } from '../world/fixtureScenario';
import { shapedWorld } from '../world/shapedWorld';

const at = (eM: number, nM: number): MapPoint => ({ eM, nM });
const road: Track = { kind: 'road', points: [at(100, 500), at(1_900, 500)] };
const path: Track = { kind: 'path', points: [at(1_000, 900), at(1_000, 1_900)] };
const flat: World = { ...shapedWorld(() => 50), tracks: [road, path] };
const start = { start: { at: [150, 520] as [number, number], facingDeg: 0 } };
const PACE = 1.4;

test('start places lie along roads, not along paths, and the exercise’s own start is one of them', () => {
  const places = startPlaces(flat, start);
  expect(places[0]).toEqual(at(150, 520));
  expect(places.slice(1).every(({ nM }) => nM === 500)).toBe(true);
  expect(places.length).toBeGreaterThan(40);
});

test('where there are only paths, paths count', () => {
  expect(startPlaces({ ...flat, tracks: [path] }, start).some(({ nM }) => nM > 1_800)).toBe(true);
});

test('a chosen place moves to the nearest point of a road; without any road it stays', () => {
  expect(snappedStart(flat, at(700.4, 800))).toEqual(at(700, 500));
  expect(snappedStart({ ...flat, tracks: [] }, at(700.4, 800))).toEqual(at(700, 800));
});

test('on level ground the quickest start is the nearest point of the road, and the walk takes distance over pace', () => {
  const judged = judgeStart(flat, startPlaces(flat, start), at(1_000, 500), at(1_000, 1_200), PACE)!;
  expect(Math.abs(judged.quickest.at.eM - 1_000)).toBeLessThanOrEqual(20);
  expect(judged.quickest.seconds).toBeCloseTo(700 / PACE, -1);
  expect(judged.chosen!.seconds! - judged.quickest.seconds).toBeLessThan(10);
  expect(judged.quickerShare).toBeLessThan(0.05);
});

test('a lake between makes the nearest point of the road a slow start', () => {
  const lake = (eM: number, nM: number) => (nM > 600 && nM < 900 && eM > 300 && eM < 1_700 ? COVER.water : COVER.open);
  const world = { ...shapedWorld(() => 50, 2_000, 10, lake), tracks: [road] };
  const judged = judgeStart(world, startPlaces(world, start), at(1_000, 500), at(1_000, 1_000), PACE)!;
  expect(judged.quickest.at.eM < 320 || judged.quickest.at.eM > 1_680).toBe(true);
  expect(judged.chosen!.seconds!).toBeGreaterThan(judged.quickest.seconds + 300);
  expect(judged.quickerShare).toBeGreaterThan(0.8);
});

test('without a choice only the quickest start is told; where the tag lies on an island there is none', () => {
  expect(judgeStart(flat, startPlaces(flat, start), null, at(1_000, 1_200), PACE)).toMatchObject({ chosen: null, quickerShare: null });
  const moat = (eM: number, nM: number) =>
    Math.hypot(eM - 1_000, nM - 1_200) < 200 && Math.hypot(eM - 1_000, nM - 1_200) > 80 ? COVER.water : COVER.open;
  const world = { ...shapedWorld(() => 50, 2_000, 10, moat), tracks: [road] };
  expect(judgeStart(world, startPlaces(world, start), at(1_000, 500), at(1_000, 1_200), PACE)).toBeNull();
});

test('seconds to a place are those of the quickest way there, uphill and down', () => {
  const slope = shapedWorld((eM) => eM / 6);
  for (const [from, to] of [
    [at(300, 300), at(1_500, 700)],
    [at(1_500, 700), at(300, 300)],
  ] as const) {
    expect(walkSecondsTo(slope, to, PACE)(from)).toBeCloseTo(quickestWalk(slope, from, to, PACE)!.seconds, 6);
  }
  expect(walkSecondsTo(slope, at(1_500, 700), PACE)(at(300, 300))).toBeGreaterThan(
    walkSecondsTo(slope, at(300, 300), PACE)(at(1_500, 700)),
  );
});

test('choosing a start notes place and tick and moves nobody; choosing none takes it back', () => {
  const scenario = plainScenario();
  const state = step(scenario, { ...begin(scenario), tick: 40 }, { type: 'chooseStart', at: at(700, 500) });
  expect(state.startChoice).toEqual({ atTick: 40, at: at(700, 500) });
  expect(state.at).toEqual(begin(scenario).at);
  expect(step(scenario, state, { type: 'chooseStart', at: null }).startChoice).toBeNull();
});
