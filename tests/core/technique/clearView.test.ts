import { expect, test } from 'vitest';
import { judgeView } from '../../../src/core/technique/clearView';
import type { MapPoint } from '../../../src/core/units/frames';
import { type Hands, handmadeOutlook, handmadeRun, handmadeWorld, MIDDLE, out } from './handmadeRun';

type Setting = Parameters<typeof handmadeRun>[1];
const view = (script: (hands: Hands) => void, outlook = handmadeOutlook(), setting: Setting = {}) =>
  judgeView(handmadeRun(script, setting), outlook);

/** Two minutes of waiting, then a reading to the north at each place. */
const readingsAt =
  (places: readonly MapPoint[], waitS = 121) =>
  (hands: Hands) => {
    hands.stand(waitS);
    for (const place of places) {
      hands.walkTo(place);
      hands.mark(0);
      hands.stand(5);
    }
  };
const apart = (stepM: number, count = 3) => Array.from({ length: count }, (_, i) => out(0, (i + 1) * stepM));

test.each([
  [75, 100],
  [74, 98],
  [50, 50],
  [26, 2],
  [25, 0],
])('reading always at the %ith percentile of the places near gives %i', (percentile, score) => {
  expect(
    view(
      readingsAt(apart(100)),
      handmadeOutlook(() => percentile),
    ).score,
  ).toBe(score);
});

test('three places 51 m apart show it, 49 m apart do not', () => {
  expect(view(readingsAt(apart(51))).score).toBe(50);
  const near = view(readingsAt(apart(49)));
  expect([near.score, near.components['places']]).toEqual([null, null]);
  expect(near.whyNotShown).not.toBe('');
});

test('readings of the first two minutes are left out', () => {
  const early = (waitS: number) => view(readingsAt([MIDDLE, ...apart(100, 2)], waitS)).score;
  expect([early(119), early(121)]).toEqual([null, 50]);
});

test('a place counts once, however often it is read from', () => {
  const outlook = handmadeOutlook(({ nM }) => (nM < 4_040 ? 75 : 25));
  expect(view(readingsAt([MIDDLE, out(0, 30), MIDDLE, out(0, 100), out(0, 200)]), outlook).score).toBeCloseTo(100 / 3, 6);
});

test('places where the quartiles of openness differ by less than 0.05 are not judged', () => {
  const shown = (contrast: number) =>
    view(
      readingsAt(apart(100)),
      handmadeOutlook(
        () => 50,
        () => contrast,
      ),
    ).score;
  expect([shown(0.049), shown(0.05)]).toEqual([null, 50]);
});

test('three places show the habit where one of them has a clearer view near, and that one alone is judged', () => {
  const unevenFrom = (nM: number) =>
    handmadeOutlook(
      (at) => (at.nM > 4_250 ? 75 : 25),
      (at) => (at.nM > nM ? 0.05 : 0.049),
    );
  expect(view(readingsAt(apart(100)), unevenFrom(4_250)).score).toBe(100);
  expect(view(readingsAt(apart(100)), unevenFrom(4_150)).score).toBe(50);
  expect(view(readingsAt(apart(100, 2)), unevenFrom(4_150)).score).toBeNull();
});

test('the last 100 m are not asked about', () => {
  const shown = (leastGainDb: number) => view(readingsAt(apart(100)), handmadeOutlook(), { leastGainDb: () => leastGainDb }).score;
  expect([shown(-21.1), shown(-20.9)]).toEqual([null, 50]);
});

/** Three readings, the last contradicting the one before by this turn; then a walk east. */
const setback =
  (turnDeg: number, thenM: number, standS = 200) =>
  (hands: Hands) => {
    readingsAt(apart(100))(hands);
    hands.walkTo(out(0, 400));
    hands.mark(turnDeg);
    hands.walk(90, thenM);
    hands.stand(standS);
  };
/** Percentile 50 on the line, more from some metres east of it. */
const clearerEast = (percentiles: number, fromM = 60) => handmadeOutlook(({ eM }) => (eM > 4_000 + fromM ? 50 + percentiles : 50));
const answers = (...args: Parameters<typeof view>) => view(...args).components['answers'];

test('after a contradictory pair 20 percentiles gained count, 19 do not; never gained gives 0', () => {
  expect(answers(setback(100, 120), clearerEast(20))).toBe(100);
  expect(answers(setback(100, 0), clearerEast(20))).toBe(0);
  expect(answers(setback(100, 120), clearerEast(19))).toBeNull(); // and none better was reachable
});

test('readings 31 degrees off each other contradict, 29 degrees off do not', () => {
  expect(answers(setback(31, 120), clearerEast(20))).toBe(100);
  expect(answers(setback(29, 120), clearerEast(20))).toBeNull();
});

const hill = (riseM: number) => handmadeWorld({ heightM: (eM) => (eM > 4_060 ? 100 + riseM : 100) });

test('10 m of height count as much, also on flat views, 9 m do not', () => {
  const flatViews = handmadeOutlook(
    () => 50,
    () => 0.3,
  );
  expect(answers(setback(100, 120), flatViews, { world: hill(10) })).toBe(100);
  expect(answers(setback(100, 0), flatViews, { world: hill(10) })).toBe(0);
  expect(answers(setback(100, 120), flatViews, { world: hill(9) })).toBeNull();
});

test('three minutes are given: a view gained after 175 s counts, after 190 s it does not', () => {
  const after = (seconds: number) =>
    answers(
      (hands) => {
        setback(100, 0, seconds)(hands);
        hands.walk(90, 90);
        hands.stand(60);
      },
      clearerEast(20, 1),
    );
  expect([after(174), after(190)]).toEqual([100, 0]);
});

test('where no better place can be reached, or the run ends first, no answer is asked for', () => {
  expect(answers(setback(100, 120), clearerEast(20, 150))).toBeNull();
  expect(answers(setback(100, 0, 170), clearerEast(20))).toBeNull();
});

test('in the last 100 m, and for percentiles where views hardly differ, no answer is asked for', () => {
  const beyond = (nM: number) => nM > 4_350;
  const closeBy = { leastGainDb: ({ nM }: MapPoint) => (beyond(nM) ? -25 : 15) };
  expect(answers(setback(100, 0), clearerEast(20), closeBy)).toBeNull();
  const even = { ...clearerEast(20), contrastAround: ({ nM }: MapPoint) => (beyond(nM) ? 0.04 : 0.3) };
  expect(answers(setback(100, 0), even)).toBeNull();
});

test('answers weigh 0.3 beside the places', () => {
  expect(view(setback(100, 120), clearerEast(20)).score).toBeCloseTo(0.7 * 50 + 0.3 * 100, 6);
});

/** The signal dies 500 s into the run, for so long. */
const dying = (seconds: number, leastGainDb: number | null = null): Setting => {
  const gone = (atS: number) => atS >= 500 && atS < 500 + seconds;
  return { leastGainDb: (_, atS) => (gone(atS) ? leastGainDb : 15), audible: (atS) => !gone(atS) };
};
const standsOn = (hands: Hands) => {
  readingsAt(apart(100))(hands);
  hands.walkTo(out(0, 400));
  hands.stand(600);
};

test('a signal that no setting brings back for 15 s is lost, for 14 s it is a fade', () => {
  expect(answers(standsOn, clearerEast(20), dying(17))).toBe(0);
  expect(answers(standsOn, clearerEast(20), dying(14))).toBeNull();
});

test('silence that more gain would end is no loss, nor is a tag never heard', () => {
  expect(answers(standsOn, clearerEast(20), dying(60, 40))).toBeNull();
  expect(answers(standsOn, clearerEast(20), { leastGainDb: () => null, audible: () => false })).toBeNull();
});

test('one silence is one loss however long', () => {
  const { moments } = view(standsOn, clearerEast(20), dying(120));
  expect(moments.filter(({ what }) => what.includes('lost'))).toHaveLength(1);
});

test('moments say when, how the place compares and what to do', () => {
  const low = view(
    readingsAt(apart(100)),
    handmadeOutlook(() => 10),
  ).moments;
  expect(low).toHaveLength(2);
  expect(low[0]).toMatchObject({ good: false, weight: 60 });
  expect(low[0]!.what).toContain('90 %');
  expect(low[0]!.next).toMatch(/^Look along the skyline/);
});

test('where the tag is plays no part', () => {
  const run = handmadeRun(readingsAt(apart(100)));
  const elsewhere = run.run.pulses.map(({ heard, truth }) => ({ heard, truth: { ...truth, tagAt: out(90, 3_000), distanceM: 3_000 } }));
  const moved = { ...run, run: { ...run.run, pulses: elsewhere } };
  expect(judgeView(moved, handmadeOutlook())).toEqual(judgeView(run, handmadeOutlook()));
});
