import { expect, test } from 'vitest';
import { blankExercise } from '../../../src/core/desk/blankExercise';
import { draftReader, faultsAt, readDraft } from '../../../src/core/desk/draft';
import { fieldOf, withField } from '../../../src/core/desk/field';
import { canRemove, movedPlace, placeField, placesOf, removedPlace, withoutPatch } from '../../../src/core/desk/places';
import { cornerAfter, hasRoomFor, MOST, pathFrom, SET_DOWN_KINDS, setDown } from '../../../src/core/desk/setDown';
import { openExercise } from '../../../src/core/run/exercise';
import { groundFaults } from '../../../src/core/run/soundness';
import { packedHeights } from '../../../src/core/scenario/ownHeights';
import type { Scenario } from '../../../src/core/scenario/schema';
import { quickestWalk } from '../../../src/core/world/reachable';
import { plainScenario } from '../world/fixtureScenario';

test.each(['1', 'fresh', 'another'])(
  'an exercise from nothing (ground %s) is without fault, on the ground too, and a way leads to its tag',
  (seed) => {
    const blank = blankExercise(seed);
    expect(readDraft(blank)).toEqual({ scenario: blank, faults: [] });
    expect(groundFaults('blank', blank)).toEqual([]);
    const { world } = openExercise(blank);
    const at = ([eM, nM]: readonly [number, number]) => ({ eM, nM });
    expect(quickestWalk(world, at(blank.start.at), at(blank.tags[0]!.at), 1.6)?.seconds).toBeGreaterThan(300);
  },
);

test('a field out of bounds, one without a number and words that hide are each told at their field', () => {
  let draft: Scenario = blankExercise('1');
  draft = withField(draft, 'tags.0.eirpDbm', 99);
  draft = withField(draft, 'kit.startGainDb', Number.NaN);
  draft = withField(draft, 'start.at', [2_600, 700]);
  const { scenario, faults } = readDraft(draft);
  expect(scenario).toBeNull();
  expect(faultsAt(faults, 'tags.0.eirpDbm').length).toBe(1);
  expect(faultsAt(faults, 'kit.startGainDb')[0]?.mend).toContain('between 0 and 90');
  const outside = readDraft(withField(blankExercise('1'), 'start.at', [2_600, 700])).faults;
  expect(faultsAt(outside, 'start').map(({ path }) => path)).toEqual(['start.at']);
  expect(faultsAt(outside, 'star')).toEqual([]);
  expect(readDraft(withField(blankExercise('1'), 'title', 'Fell\u202eemoh')).faults.length).toBe(1);
});

test('one draft after the other is read as each by itself, own heights known or new, for other cells, cut off, with a note too long', () => {
  const blank = blankExercise('1');
  const heights = (side: number) =>
    packedHeights(
      new Float64Array(side * side).map((_, i) => 90 + (i % 7)),
      side,
    );
  const draft: Scenario = {
    ...blank,
    ground: { ...blank.ground, sizeM: 2_000, cellM: 10, own: { ...heights(200), source: 'invented' } },
  };
  const typed = withField(draft, 'title', 'Over the club hut');
  const coarser = withField(typed, 'ground.cellM', 20);
  const readNext = draftReader();
  for (const one of [
    typed,
    withField(typed, 'title', ''),
    withField(typed, 'ground.own.source', 'The club’s own survey'),
    withField(typed, 'ground.own.source', 'x'.repeat(5_000)),
    withField(typed, 'ground.own.stepM', -1),
    coarser,
    withField(coarser, 'ground.own.packed', heights(100).packed),
    coarser,
    typed,
    withField(typed, 'ground.own.packed', typed.ground.own!.packed.slice(4)),
    blank,
    typed,
  ])
    expect(readNext(one)).toEqual(readDraft(one));
  expect(readNext(coarser).faults.map(({ path }) => path)).toEqual(['ground.own.packed']);
  expect(readNext(withField(typed, 'ground.own.source', 'x'.repeat(5_000))).faults.map(({ path }) => path)).toEqual(['ground.own.source']);
});

test('a field is changed alone, the rest is the very same, and the one before stays as it was', () => {
  const before = plainScenario();
  const text = JSON.stringify(before);
  const after = withField(before, 'ground.relief.strengthM', 12);
  expect(after.ground.relief.strengthM).toBe(12);
  expect(after.tags).toBe(before.tags);
  expect(JSON.stringify(before)).toBe(text);
  expect(withField(after, 'ground.relief.strengthM', 12)).toBe(after);
  expect(() => withField(before, 'ground.reliefs.strengthM', 12)).toThrow('no field ground.reliefs.strengthM');
  expect(() => withField(before, 'tags.3.name', 'x')).toThrow(RangeError);
  expect(withField(withField(before, 'parS', 300), 'parS', undefined)).toEqual(before);
});

test('whatever is set down can be found, moved and taken away, and the exercise is as it was', () => {
  for (const kind of SET_DOWN_KINDS) {
    const before = plainScenario();
    const { scenario, path } = setDown(before, kind, [1_200.4, 800.6]);
    const place = placesOf(scenario).find((one) => one.path === path)!;
    expect(fieldOf(scenario, placeField(path))).toEqual([{ 'power-line': 1_000, patch: 1_280 }[kind as string] ?? 1_200, 801]);
    const moved = movedPlace(scenario, path, [-50, 9_999]);
    expect(fieldOf(moved, placeField(path))).toEqual([0, 3_000]);
    expect(readDraft(scenario).faults).toEqual([]);
    expect(kind === 'patch' ? withoutPatch(scenario, 'ground.patches.0') : removedPlace(scenario, place)).toEqual(before);
  }
});

test('the format’s bounds are kept by the desk: no tag, building, line, corner or point of a path too many', () => {
  let scenario = plainScenario();
  for (const kind of SET_DOWN_KINDS) {
    for (let i = 0; i < 60; i++) scenario = setDown(scenario, kind, [500 + 20 * i, 900]).scenario;
    expect(hasRoomFor(scenario, kind)).toBe(false);
  }
  for (let i = 0; i < 20; i++) scenario = cornerAfter(scenario, 'ground.powerLines.0.route.0').scenario;
  for (let i = 0; i < 40; i++) scenario = cornerAfter(scenario, 'ground.patches.3.outline.5').scenario;
  expect(fieldOf(scenario, 'ground.patches.3.outline')).toHaveLength(MOST.patchCorners);
  scenario = withField(scenario, 'tags.0.movement', pathFrom(scenario, 0));
  for (let i = 0; i < 60; i++) scenario = cornerAfter(scenario, 'tags.0.movement.points.1').scenario;
  expect(fieldOf(scenario, 'tags.0.movement.points')).toHaveLength(MOST.waypoints);
  expect(readDraft(scenario).faults).toEqual([]);
});

test('the last tag and the start stay; a line of one corner, a patch of two and a path of one point are none', () => {
  const scenario = withField(plainScenario(), 'tags.0.movement', pathFrom(plainScenario(), 0));
  const of = (path: string) => placesOf(scenario).find((one) => one.path === path)!;
  expect(canRemove(scenario, of('start'))).toBe(false);
  expect(removedPlace(scenario, of('tags.0'))).toBe(scenario);
  expect(removedPlace(scenario, of('tags.0.movement.points.1')).tags[0]!.movement).toEqual({ kind: 'stays' });
  let line = scenario;
  line = removedPlace(line, placesOf(line).find(({ kind }) => kind === 'line-corner')!);
  expect(line.ground.powerLines[0]!.route).toHaveLength(2);
  line = removedPlace(line, placesOf(line).find(({ kind }) => kind === 'line-corner')!);
  expect(line.ground.powerLines).toEqual([]);
  let patch = setDown(setDown(scenario, 'patch', [900, 900]).scenario, 'patch', [1_500, 900]).scenario;
  const corner = () => placesOf(patch).find(({ path }) => path === 'ground.patches.0.outline.0')!;
  for (let i = 0; i < 3; i++) patch = removedPlace(patch, corner());
  expect(patch.ground.patches!.map(({ outline }) => outline.length)).toEqual([3, 6]);
  patch = removedPlace(patch, corner());
  expect(patch.ground.patches!.map(({ outline }) => outline.length)).toEqual([6]);
  expect(withoutPatch(patch, 'ground.patches.0')).toEqual(scenario);
});

test('a tag taken away leaves the task asking for the same tag as before, for any where that one is gone', () => {
  const [first] = plainScenario().tags;
  const named = (name: string) => ({ ...first!, name });
  const asks = plainScenario({ tags: ['Ewe', 'Ram', 'Lamb'].map(named), task: { kind: 'find', tag: 1 } });
  const without = (tag: number) => removedPlace(asks, placesOf(asks).find(({ path }) => path === `tags.${tag}`)!).task;
  expect(without(0)).toEqual({ kind: 'find', tag: 0 });
  expect(without(1)).toBeUndefined();
  expect(without(2)).toEqual({ kind: 'find', tag: 1 });
});
