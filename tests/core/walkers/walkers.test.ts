import { expect, test } from 'vitest';
import { TICKS_PER_S } from '../../../src/core/run/state';
import { gradeReplay } from '../../../src/core/technique/grade';
import { distanceM } from '../../../src/core/units/frames';
import { WALKERS } from '../../../src/core/walkers/catalogue';
import { fidgetsIn } from '../../../src/core/walkers/fidgety';
import { playWalker } from '../../../src/core/walkers/play';
import { seenNow } from '../../../src/core/walkers/policy';
import { quickestWalk } from '../../../src/core/world/reachable';
import { openField } from './openField';

const exercise = openField();
const runs = new Map<string, ReturnType<typeof run>>();

function run(id: string) {
  const walker = WALKERS.find((known) => known.id === id)!;
  const live = playWalker(exercise, walker, 1);
  return { live, grade: gradeReplay({ exercise, run: live }, { practice: walker.practice }) };
}

function ran(id: string) {
  const known = runs.get(id) ?? run(id);
  runs.set(id, known);
  return known;
}

const habit = (id: string, of: keyof ReturnType<typeof ran>['grade']['habits']): number => ran(id).grade.habits[of].score ?? Number.NaN;

test('the catalogue has the thirteen walkers of the study, each once', () => {
  const ids = WALKERS.map(({ id }) => id);
  expect(ids).toEqual([...new Set(ids)]);
  expect(ids.length).toBe(13);
});

test('steady finds the tag within 2.5 times the shortest walk and 5 minutes, with a technique of 85 or more', () => {
  const { live, grade } = ran('steady');
  const { start, tags, limits } = exercise.scenario;
  const at = ([eM, nM]: readonly [number, number]) => ({ eM, nM });
  const shortest = quickestWalk(exercise.world, at(start.at), at(tags[0]!.at), limits.paceMPerS)!;
  expect(live.state.ending).toBe('found');
  expect(live.state.tick / TICKS_PER_S).toBeLessThan(2.5 * shortest.seconds + 300);
  expect(grade.technique).toBeGreaterThanOrEqual(85);
});

test('what a walker sees holds no place of a tag, no truth, no seed', () => {
  const seen = seenNow(exercise, ran('steady').live.state);
  expect(Object.keys(seen)).not.toContain('scenario');
  expect(Object.keys(seen.tagList[0]!).sort()).toEqual(['frequencyMHz', 'pulsesPerMinute']);
  const { map: _map, ...rest } = seen;
  expect(JSON.stringify(rest)).not.toContain(String(exercise.scenario.tags[0]!.at[0]));
});

test('a walk is the same again: exercise and seed decide it', () => {
  const again = run('steady').live;
  expect(again.log).toEqual(ran('steady').live.log);
});

test('20 dB more gain than needed costs quiet gain at least 25 points', () => {
  expect(habit('loud-handed-20', 'quietGain')).toBeLessThan(habit('steady', 'quietGain') - 25);
});

test('more gain than needed scores no higher than less: 6, 12 and 20 dB', () => {
  const scores = ['steady', 'loud-handed-6', 'loud-handed-12', 'loud-handed-20'].map((id) => habit(id, 'quietGain'));
  expect(scores).toEqual([...scores].sort((a, b) => b - a));
});

test('turning the knob in every sweep costs set-then-sweep at least 25 points and quiet gain at most 10', () => {
  expect(habit('fidgety-4', 'setThenSweep')).toBeLessThan(habit('steady', 'setThenSweep') - 25);
  expect(Math.abs(habit('fidgety-4', 'quietGain') - habit('steady', 'quietGain'))).toBeLessThan(10);
});

test('the four doses of fidgeting turn the knob in 1, 2, 3 and 4 of four sweeps', () => {
  const shares = [1, 2, 3, 4].map((dose) => [...Array(40).keys()].filter(fidgetsIn(dose)).length / 40);
  expect(shares).toEqual([0.25, 0.5, 0.75, 1]);
});

test('rooted stands at least 80 % of the time between places, sweeps left out, and walk-and-listen loses 25 points', () => {
  const { live, grade } = ran('rooted');
  const walked = live.states.filter(({ at }, i) => i > 0 && distanceM(at, live.states[i - 1]!.at) > 0.0025).length;
  const spun = live.states.filter(({ spinDegPerS }) => spinDegPerS !== 0).length;
  expect(1 - walked / (live.states.length - spun)).toBeGreaterThan(0.8);
  expect(grade.habits.walkAndListen.score!).toBeLessThan(habit('steady', 'walkAndListen') - 25);
});

test('crammer walks as steady does and differs in practice alone', () => {
  expect(ran('crammer').live.log).toEqual(ran('steady').live.log);
  expect(habit('crammer', 'keepPractising')).toBeLessThan(habit('steady', 'keepPractising') - 25);
});
