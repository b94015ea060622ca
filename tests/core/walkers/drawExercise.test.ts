import { expect, test } from 'vitest';
import { LESSONS } from '../../../src/core/scenario/schema';
import { distanceM } from '../../../src/core/units/frames';
import { drawExercise } from '../../../src/core/walkers/drawExercise';
import { generateWorld } from '../../../src/core/world/generate';
import { quickestWalk } from '../../../src/core/world/reachable';
import { walkable } from '../../../src/core/world/walking';

const at = ([eM, nM]: readonly [number, number]) => ({ eM, nM });

test.each(LESSONS.map((lesson, i) => [lesson, 1 + (i % 2), 40 + i] as const))(
  '%s, level %i, seed %i: start and tags can be stood at, and a way leads to the first tag in less than a third of the time',
  (lesson, level, seed) => {
    const scenario = drawExercise(seed, lesson, level);
    const world = generateWorld(scenario);
    expect(walkable(world, at(scenario.start.at))).toBe(true);
    for (const tag of scenario.tags) expect(walkable(world, at(tag.at))).toBe(true);
    const walk = quickestWalk(world, at(scenario.start.at), at(scenario.tags[0]!.at), scenario.limits.paceMPerS)!;
    expect(3 * walk.seconds).toBeLessThan(scenario.limits.timeS);
  },
);

test('the same seed draws the same exercise, another seed another', () => {
  expect(drawExercise(7, 'axis', 1)).toEqual(drawExercise(7, 'axis', 1));
  expect(drawExercise(8, 'axis', 1).start).not.toEqual(drawExercise(7, 'axis', 1).start);
});

test('a tag of level 3 lies farther off than one of level 1, of the same seed and lesson', () => {
  const farM = (level: number) => {
    const { start, tags } = drawExercise(11, 'crossing', level);
    return distanceM(at(start.at), at(tags[0]!.at));
  };
  expect(farM(1)).toBeLessThan(600);
  expect(farM(3)).toBeGreaterThan(650);
});

test('lessons have what they teach: wires a line, axis a lying whip, moving a wanderer, several tags more than one', () => {
  expect(drawExercise(2, 'wires', 1).ground.powerLines.length).toBe(1);
  expect(drawExercise(2, 'axis', 1).tags[0]!.whip.leanDeg).toBeGreaterThanOrEqual(75);
  expect(drawExercise(2, 'moving', 1).tags[0]!.movement.kind).toBe('wanders');
  expect(drawExercise(2, 'several', 2).tags.length).toBeGreaterThan(1);
});

test('a level outside 1 to 5 is refused', () => {
  expect(() => drawExercise(1, 'axis', 6)).toThrow(RangeError);
});
