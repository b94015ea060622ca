import { expect, test } from 'vitest';
import type { AtStart } from '../../../src/core/desk/atStart';
import { atStart } from '../../../src/core/desk/atStart';
import { blankExercise } from '../../../src/core/desk/blankExercise';
import { lessonsTaught } from '../../../src/core/desk/lessonsTaught';
import { misleadingPlaces } from '../../../src/core/desk/misleads';
import { type RehearsedBearing, type RehearsedWalk, rehearsedWalk } from '../../../src/core/desk/rehearsedWalk';
import { unfairness } from '../../../src/core/desk/unfair';
import { verdictOf } from '../../../src/core/desk/verdict';
import { openExercise } from '../../../src/core/run/exercise';
import { LESSONS } from '../../../src/core/scenario/schema';
import { plainScenario } from '../world/fixtureScenario';

const START: AtStart = {
  distanceM: 600,
  walkS: 400,
  inSight: true,
  leastGainDb: 20,
  excessDb: 10,
  frontOverBackDb: 12,
  loudestOffDeg: 2,
};
const bearing = (part: Partial<RehearsedBearing> = {}): RehearsedBearing => ({
  at: { eM: 500, nM: 500 },
  errorDeg: 3,
  by: 'direct',
  strong: [part.by ?? 'direct'],
  inSight: true,
  ...part,
});
const walk = (part: Partial<RehearsedWalk> = {}): RehearsedWalk => ({
  seed: 1,
  ending: 'found',
  timeS: 600,
  walkedM: 900,
  bearings: [bearing()],
  ...part,
});
const many = (count: number, part: Partial<RehearsedWalk> = {}) => Array.from({ length: count }, () => walk(part));
const plain = plainScenario({ cautions: ['wires', 'water', 'alone'] });

test.each([
  [20, 'yes'],
  [18, 'yes'],
  [17, 'mostly'],
  [12, 'mostly'],
  [11, 'seldom'],
  [1, 'seldom'],
  [0, 'no'],
])('%i of 20 walks that find the tag: solvable %s', (found, solvable) => {
  const verdict = verdictOf(plain, START, [...many(found), ...many(20 - found, { ending: 'gave-up' })]);
  expect(verdict).toMatchObject({ walks: 20, found, solvable });
});

test('time is that of the walks that found it, and none where none did', () => {
  const walks = [walk({ timeS: 900 }), walk({ timeS: 500 }), walk({ timeS: 700 }), walk({ timeS: 20, ending: 'gave-up' })];
  expect(verdictOf(plain, START, walks).timeS).toEqual({ fastest: 500, middle: 700, slowest: 900 });
  expect(verdictOf(plain, START, many(3, { ending: 'gave-up' })).timeS).toBeNull();
  expect(() => verdictOf(plain, START, [])).toThrow(RangeError);
});

test.each([
  [0, 1],
  [5, 1],
  [6, 2],
  [12, 2],
  [13, 3],
  [21, 4],
  [29, 5],
])('%i of 100 bearings off by more than 15° are like level %i', (wrong, level) => {
  const bearings = Array.from({ length: 100 }, (_, i) => bearing({ errorDeg: i < wrong ? -15.1 : 15 }));
  expect(verdictOf(plain, START, [walk({ bearings })]).likeLevel).toBe(level);
});

test('misleading bearings within 80 m are one place with its middle, its error and the wave behind most of them', () => {
  const near = (eM: number, errorDeg: number, by: RehearsedBearing['by'] = 'hillside') => bearing({ at: { eM, nM: 800 }, errorDeg, by });
  const walks = [
    walk({ bearings: [near(1_000, 40), near(1_040, -60), near(1_060, 3)] }),
    walk({ bearings: [near(1_060, 80, 'wire'), near(1_900, 20, 'wall')] }),
  ];
  const places = misleadingPlaces(walks);
  expect(places).toHaveLength(2);
  expect(places[0]).toEqual({ at: { eM: 1_033, nM: 800 }, bearings: 3, offDeg: 60, by: 'hillside' });
  expect(places[1]).toMatchObject({ bearings: 1, by: 'wall' });
});

test('each lesson is shown by what speaks for it, and not on either side of its bound without', () => {
  const taught = (start: Partial<AtStart>, walks: readonly RehearsedWalk[], over = {}) =>
    lessonsTaught(plainScenario(over), { ...START, ...start }, walks).map(({ lesson }) => lesson);
  const tag = plainScenario().tags[0]!;
  const bearings = (by: RehearsedBearing['by'], share: number, inSight = true) =>
    many(1, { bearings: Array.from({ length: 20 }, (_, i) => bearing({ by: i < 20 * share ? by : 'direct', inSight })) });
  expect(taught({}, many(3))).toEqual([]);
  const cases: readonly (readonly [string, readonly string[], readonly string[]])[] = [
    ['quiet-gain', taught({ excessDb: 30 }, many(1)), taught({ excessDb: 29.9 }, many(1))],
    ['back-signal', taught({ frontOverBackDb: 2.9 }, many(1)), taught({ frontOverBackDb: 3 }, many(1))],
    [
      'axis',
      taught({}, many(1), { tags: [{ ...tag, whip: { leanDeg: 60, towardDeg: 0 } }] }),
      taught({}, many(1), { tags: [{ ...tag, whip: { leanDeg: 59, towardDeg: 0 } }] }),
    ],
    ['bounce', taught({}, many(1, { bearings: [bearing({ strong: ['direct', 'hillside'] })] })), taught({}, many(1))],
    ['bounce', taught({}, bearings('hillside', 0.1)), taught({}, bearings('hillside', 0.05))],
    ['wires', taught({}, bearings('wire', 0.1)), taught({}, bearings('wire', 0.05))],
    [
      'clear-view',
      taught({}, [...many(1, { bearings: [bearing(), bearing({ inSight: false })] })]),
      taught({}, bearings('direct', 1, false)),
    ],
    [
      'crossing',
      taught({}, many(1, { bearings: [bearing(), bearing(), bearing()] })),
      taught({}, many(1, { bearings: [bearing(), bearing()] })),
    ],
    ['moving', taught({}, many(1), { tags: [{ ...tag, movement: { kind: 'wanders', withinM: 50, speedMPerS: 0.3, restS: 60 } }] }), []],
    ['several', taught({}, many(1), { tags: [tag, { ...tag, name: 'Other' }] }), []],
    ['night', taught({}, many(1), { aids: { ownPosition: false } }), []],
    ['close-in', taught({ distanceM: 300 }, many(1)), taught({ distanceM: 301 }, many(1))],
    ['search', taught({ distanceM: 1_000 }, many(1)), taught({ distanceM: 999 }, many(1))],
  ];
  expect([...new Set(cases.map(([lesson]) => lesson))]).toEqual([...LESSONS]);
  for (const [lesson, shown, not] of cases) {
    expect(shown).toContain(lesson);
    expect(not).not.toContain(lesson);
  }
});

test.each([
  ['tags.0.at', { walkS: null }, many(2), {}],
  ['start.at', { leastGainDb: null, excessDb: null }, many(2), { lesson: 'axis' as const }],
  ['start.at', { distanceM: 39 }, many(2), {}],
  ['level', { loudestOffDeg: 46 }, many(2), { level: 2 }],
  ['limits.timeS', {}, [...many(2), walk({ ending: 'out-of-time' })], {}],
  ['limits.timeS', {}, many(2, { timeS: 2_900 }), {}],
  ['tags.0.at', {}, many(3, { ending: 'gave-up', bearings: [bearing({ inSight: false })] }), {}],
  ['cautions', {}, many(2), { cautions: ['water' as const] }],
  ['cautions', {}, many(2), { cautions: ['wires' as const] }],
])('unfair at %s alone with %o', (path, start, walks, over) => {
  const fair = { cautions: ['wires' as const, 'water' as const] };
  expect(unfairness(plainScenario(fair), START, many(2))).toEqual([]);
  const found = unfairness(plainScenario({ ...fair, ...over }), { ...START, ...start }, walks);
  expect(found.map((one) => one.path)).toEqual([path]);
  expect(found[0]!.mend.length).toBeGreaterThan(5);
});

test('rehearsed, the exercise from nothing is solved, and its start is as it was set', () => {
  const scenario = blankExercise('rehearsed');
  const exercise = openExercise(scenario);
  const start = atStart(exercise);
  expect(start.distanceM).toBeCloseTo(Math.hypot(200, 600), 6);
  expect(start.walkS!).toBeGreaterThan(start.distanceM / 1.6 - 30);
  expect(start.excessDb!).toBeCloseTo(50 - start.leastGainDb!, 6);
  let ticks = 0;
  const walked = rehearsedWalk(exercise, 1, () => ticks++);
  expect(walked.ending).toBe('found');
  expect(ticks).toBe(Math.round(walked.timeS * 20) + 1); // the tick in which the find is declared is told too
  expect(walked.bearings.length).toBeGreaterThan(1);
  expect(walked.bearings.every(({ by, strong }) => strong[0] === by)).toBe(true);
  expect(structuredClone(walked)).toEqual(walked);
  expect(rehearsedWalk(exercise, 1)).toEqual(walked);
  expect(verdictOf(scenario, start, [walked])).toMatchObject({ found: 1, solvable: 'yes' });
});
