import { expect, test } from 'vitest';
import { followsPart } from '../../../src/core/technique/followsPart';
import { walkEvidence } from '../../../src/core/technique/walkEvidence';
import { COVER } from '../../../src/core/world/world';
import { plainScenario } from '../world/fixtureScenario';
import { type Hands, handmadeOutlook, handmadeRun, handmadeWorld, MIDDLE, out } from './handmadeRun';

type Setting = Parameters<typeof handmadeRun>[1];

const follows = (script: (hands: Hands) => void, setting: Setting = {}, outlook = handmadeOutlook()) =>
  followsPart(walkEvidence(handmadeRun(script, setting), outlook));

/** One bearing to the north, then this course for 400 m (286 s), and a last reading there. */
const offCourse =
  (courseDeg: number, lastDeg = 0) =>
  (hands: Hands) => {
    hands.mark(0);
    hands.stand(5);
    hands.walk(courseDeg, 400);
    hands.mark(lastDeg);
    hands.stand(1);
  };

test.each([
  [0, 100],
  [44, 100],
  [-44, 100],
  [46, 0],
  [-46, 0],
  [180, 0],
])('a course %i degrees off the only bearing gives %i', (courseDeg, score) => {
  expect(follows(offCourse(courseDeg)).score).toBe(score);
});

test('nine tenths of the way on course give 100, a quarter gives 0, 0.575 gives 50', () => {
  const share = (onM: number) =>
    follows((hands) => {
      hands.mark(0);
      hands.walk(0, 1.4 * onM);
      hands.walk(90, 1.4 * (1_000 - onM));
    }).score!;
  expect(share(905)).toBe(100);
  expect(share(880)).toBeLessThan(100);
  expect(share(575)).toBeCloseTo(50, 0);
  expect(share(270)).toBeGreaterThan(0);
  expect(share(245)).toBe(0);
});

test('where two readings agree the course is held against the point they lead to, not against the last bearing', () => {
  const driftingLast = (lastDeg: number) =>
    follows((hands) => {
      hands.walkTo(out(270, 1_000));
      hands.mark(45);
      hands.walkTo(out(90, 1_000));
      hands.mark(315);
      hands.walkTo(MIDDLE);
      hands.mark(lastDeg); // contradicts the two, which outvote it
      hands.walk(0, 400);
    }).score;
  expect(driftingLast(100)).toBeCloseTo(driftingLast(0)!, 0);
  expect(driftingLast(100)).toBeGreaterThan(60);
});

test('a walk to a reading at a crossing angle of 31 degrees is not asked about, at 29 degrees it is', () => {
  expect(follows(offCourse(90, -31)).score).toBeNull();
  expect(follows(offCourse(90, -29)).score).toBe(0);
  // Walked to the other side: the two lines meet only behind.
  expect(follows(offCourse(270, -31)).score).toBe(0);
});

test('a walk to a view 20 percentiles better is not asked about, 19 better it is', () => {
  const better = (percentiles: number) => handmadeOutlook(({ eM }) => (eM > 4_200 ? 30 + percentiles : 30));
  expect(follows(offCourse(90), {}, better(20)).score).toBeNull();
  expect(follows(offCourse(90), {}, better(19)).score).toBe(0);
});

test('a walk to the other side of wires is not asked about', () => {
  const wired = handmadeWorld({ wires: [[out(100, 200), out(100, 1_000)]] });
  const across = handmadeWorld({
    wires: [
      [
        { eM: 4_200, nM: 3_800 },
        { eM: 4_200, nM: 4_300 },
      ],
    ],
  });
  expect(follows(offCourse(90), { world: across }).score).toBeNull();
  expect(follows(offCourse(90), { world: wired }).score).toBe(0);
});

test('a walk with a purpose has five minutes: 299 s are not asked about, 301 s are', () => {
  const taking = (seconds: number) =>
    follows((hands) => {
      hands.mark(0);
      hands.walk(90, 1.4 * seconds);
      hands.mark(-40);
    }).score;
  expect([taking(299), taking(301)]).toEqual([null, 0]);
});

test('exercises fixed from stations do not show it', () => {
  expect(follows(offCourse(0), { scenario: plainScenario({ lesson: 'crossing' }) }).score).toBeNull();
});

test('the last 100 m are not asked about', () => {
  expect(follows(offCourse(180), { leastGainDb: () => -21.1 }).score).toBeNull();
  expect(follows(offCourse(180), { leastGainDb: () => -20.9 }).score).toBe(0);
});

test('along a shore the course may leave the sound', () => {
  const lake = handmadeWorld({ coverAt: (_, nM) => (nM > 4_040 ? COVER.water : COVER.open) });
  expect(follows(offCourse(90), { world: lake }).score).toBeNull();
});

test('before the first reading, and for less than a minute, nothing is asked', () => {
  expect(follows(({ walk }) => walk(90, 400)).score).toBeNull();
  const brief = (seconds: number) =>
    follows((hands) => {
      hands.mark(0);
      hands.walk(90, 1.4 * seconds);
    }).score;
  expect([brief(58), brief(62)]).toEqual([null, 0]);
});

test('past a crossing that least gain says is too near, the way of setting out is still right; past what it says it is not', () => {
  const pastCrossing = (leastGainDb: number) =>
    follows(
      (hands) => {
        hands.walkTo(out(270, 60));
        hands.mark(60);
        hands.walkTo(MIDDLE);
        hands.mark(0); // the two cross 35 m ahead
        hands.walk(0, 400);
      },
      { leastGainDb: () => leastGainDb },
    ).score;
  expect(pastCrossing(15)).toBe(100); // 800 m
  expect(pastCrossing(-14)).toBeLessThan(30); // 150 m
});

test('on top of the point that readings lead to, no direction is asked for', () => {
  const score = follows((hands) => {
    hands.walkTo(out(270, 600));
    hands.mark(90);
    hands.walkTo(out(180, 600));
    hands.mark(0);
    hands.walkTo(out(180, 29));
    for (let i = 0; i < 40; i++) hands.walkTo(out(90 * i, 25)); // round the point, never farther than 30 m from it
  }).score;
  expect(score).toBe(100);
});

test('a walk off course is a bad moment that says how far off and what to do', () => {
  const [bad] = follows(offCourse(90)).moments;
  expect(bad).toMatchObject({ good: false, fromS: 6 });
  expect(bad!.what).toContain('90 degrees off');
  expect(bad!.next).toMatch(/^Follow the sound/);
  expect(follows(offCourse(0)).moments[0]!.good).toBe(true);
});
