import { expect, test } from 'vitest';
import { cornersOf } from '../../../src/core/technique/corners';
import { keepsLinePart } from '../../../src/core/technique/keepsLinePart';
import { walkEvidence } from '../../../src/core/technique/walkEvidence';
import { COVER } from '../../../src/core/world/world';
import { FLAT, type Hands, handmadeOutlook, handmadeRun, handmadeWorld, out } from './handmadeRun';

const keeps = (script: (hands: Hands) => void, setting: Parameters<typeof handmadeRun>[1] = {}, outlook = handmadeOutlook()) =>
  keepsLinePart(walkEvidence(handmadeRun(script, setting), outlook));

const START = out(180, 1_500);

/** Six legs of 100 m north, a bearing straight ahead at each; then what is to be judged. */
const lineThen = (then: (hands: Hands) => void) => (hands: Hands) => {
  hands.walkTo(START);
  for (let i = 0; i < 6; i++) {
    hands.mark(0);
    hands.walk(0, 100);
  }
  then(hands);
};

const turnOf = (deg: number) =>
  handmadeRun((hands) => {
    hands.walk(0, 100);
    hands.walk(deg, 100);
  }).run.states;

test('a corner of 61 degrees is a course change, one of 59 is none', () => {
  expect(cornersOf(turnOf(61.5), 60)).toHaveLength(1);
  expect(cornersOf(turnOf(59), 60)).toHaveLength(0);
  const [corner] = cornersOf(turnOf(-120), 60);
  expect(corner!.beforeDeg).toBeCloseTo(0, 6);
  expect(Math.abs(corner!.afterDeg - 240)).toBeLessThan(2);
});

test('a bend of 90 degrees over 120 m, and a step aside of 4 m and back, change no course', () => {
  const bend = handmadeRun((hands) => {
    for (let deg = 0; deg <= 90; deg += 5) hands.walk(deg, 7);
  });
  expect(cornersOf(bend.run.states, 60)).toHaveLength(0);
  const aside = handmadeRun((hands) => {
    hands.walk(0, 60);
    hands.walk(90, 4);
    hands.walk(270, 4);
    hands.walk(0, 60);
  });
  expect(cornersOf(aside.run.states, 60)).toHaveLength(0);
});

test('two corners 60 m apart are two, whatever was done in between', () => {
  const run = handmadeRun((hands) => {
    hands.walk(0, 80);
    hands.stand(60);
    hands.walk(90, 60);
    hands.walk(0, 80);
  });
  expect(cornersOf(run.run.states, 60)).toHaveLength(2);
});

test('a straight line over six readings gives 100', () => {
  expect(keeps(lineThen(() => {})).score).toBe(100);
});

test('one change of 90 degrees after a single reading that says so costs: one in seven legs gives 57', () => {
  const score = keeps(
    lineThen((hands) => {
      hands.mark(90);
      hands.walk(90, 100);
    }),
  ).score;
  expect(score).toBeCloseTo(100 * (1 - 3 / 7), 6);
});

test('a change of 58.5 degrees costs nothing, one of 62 costs', () => {
  const turning = (deg: number) =>
    keeps(
      lineThen((hands) => {
        hands.mark(deg);
        hands.walk(deg, 100);
      }),
    ).score;
  expect(turning(58.5)).toBe(100);
  expect(turning(62)).toBeLessThan(100);
});

test('changes on a third of the legs give 0', () => {
  const score = keeps((hands) => {
    hands.walkTo(START);
    for (const along of [0, 0, 90, 90, 0, 0]) {
      hands.mark(along === 0 ? 200 : 270);
      hands.walk(along, 100);
    }
  }).score;
  expect(score).toBe(0);
});

/** Walks east past a tag that lies 400 m to the north, and turns to it after readings of these bearings, the last at the turn. */
const turnsNorthAfter = (bearings: readonly number[], courseDeg = 0, world = FLAT) =>
  keeps(
    (hands) => {
      hands.walkTo(START);
      for (const marked of bearings) {
        hands.mark(marked);
        hands.stand(2);
        if (hands.at().eM < START.eM + 100 * (bearings.length - 1) - 1) hands.walk(90, 100);
      }
      hands.walk(courseDeg, 200);
    },
    { world },
  );

test('a change that two agreeing readings led to costs nothing and is a good moment', () => {
  const { score, moments } = turnsNorthAfter([60, 40, 20, 0]);
  expect(score).toBe(100);
  expect(moments.some(({ good, what }) => good && what.includes('agreeing'))).toBe(true);
});

test('two readings that agree are enough, against a third', () => {
  const { score, moments } = turnsNorthAfter([180, 14, 0]);
  expect(score).toBe(100);
  expect(moments.some(({ good, what }) => good && what.includes('when 2 agreeing'))).toBe(true);
});

test('the same change with readings that do not agree costs', () => {
  expect(turnsNorthAfter([180, 90, 270, 0]).score).toBeLessThan(50);
});

test('a single reading does not support a turn, though it says so; where water shuts the old line none is needed', () => {
  const costs = ({ moments }: ReturnType<typeof keeps>) => moments.filter(({ good }) => !good).map(({ what }) => what);
  expect(costs(turnsNorthAfter([270, 180, 0]))).toEqual([expect.stringContaining('no two agreeing readings')]);
  const lakeToTheEast = handmadeWorld({ coverAt: (eM) => (eM > START.eM + 240 ? COVER.water : COVER.open) });
  expect(costs(turnsNorthAfter([270, 180, 0], 0, lakeToTheEast))).toEqual([]);
});

test('agreeing readings do not support a turn the other way', () => {
  expect(turnsNorthAfter([60, 40, 20, 0], 180).score).toBeLessThan(50);
});

test('a turn to a better view and back onto the line costs nothing, one to no better view does', () => {
  const excursion = lineThen((hands) => {
    hands.mark(0);
    hands.walk(90, 150);
    hands.mark(0);
    hands.walk(0, 150);
  });
  const hill = handmadeOutlook(({ eM }) => (eM > 4_100 ? 90 : 40));
  expect(keeps(excursion, {}, hill).score).toBe(100);
  expect(keeps(excursion).score).toBeLessThan(100);
});

test('a turn where water shuts the line costs nothing', () => {
  const turn = lineThen((hands) => {
    hands.mark(0);
    hands.walk(90, 100);
  });
  const lake = handmadeWorld({ coverAt: (_, nM) => (nM > START.nM + 640 ? COVER.water : COVER.open) });
  expect(keeps(turn, { world: lake }).score).toBe(100);
  expect(keeps(turn).score).toBeLessThan(100);
});

test('a turn in the last 100 m costs nothing', () => {
  const turn = lineThen((hands) => {
    hands.mark(90);
    hands.walk(90, 100);
  });
  const strongEnd = (db: number) => ({ leastGainDb: ({ nM }: { nM: number }) => (nM > START.nM + 580 ? db : 15) });
  expect(keeps(turn, strongEnd(-21.1)).score).toBe(100);
  expect(keeps(turn, strongEnd(-20.9)).score).toBeLessThan(100);
});

/** Walks north for nine legs; the bearings come from the left or right by so much from the seventh reading on. */
const against = (counter: readonly number[]) =>
  keeps(
    lineThen((hands) => {
      for (const marked of counter) {
        hands.mark(marked);
        hands.walk(0, 100);
      }
    }),
  );

test('walking on against three contradicting readings costs, against two it does not', () => {
  expect(against([150, 200, 150]).score).toBeCloseTo(100 * (1 - 3 / 9), 6);
  expect(against([150, 200]).score).toBe(100);
  expect(against([150, 200, 150]).moments.find(({ good }) => !good)!.what).toContain('last three readings');
});

test('readings 31 degrees off the line contradict it, 29 degrees off they do not', () => {
  expect(against([180, 180, 31]).score).toBeLessThan(100);
  expect(against([180, 180, 29]).score).toBe(100);
});

test('two legs show nothing, three do', () => {
  const legs = (count: number) =>
    keeps((hands) => {
      for (let i = 0; i < count; i++) {
        hands.mark(0);
        hands.walk(0, 100);
      }
    }).score;
  expect([legs(2), legs(3)]).toEqual([null, 100]);
});

test('a leg of 24 m does not count, one of 26 m does', () => {
  const last = (lengthM: number) =>
    keeps((hands) => {
      for (const m of [100, 100, lengthM]) {
        hands.mark(0);
        hands.walk(0, m);
      }
    }).score;
  expect([last(24), last(26)]).toEqual([null, 100]);
});
