import { expect, test } from 'vitest';
import { movesPart } from '../../../src/core/technique/movesPart';
import { walkEvidence } from '../../../src/core/technique/walkEvidence';
import { type Hands, handmadeOutlook, handmadeRun, out } from './handmadeRun';

const moves = (script: (hands: Hands) => void) =>
  movesPart(walkEvidence(handmadeRun(script, { startAt: out(180, 1_500) }), handmadeOutlook()));

/** Walks north for some seconds, then stands for some. */
const walkThenStand = (walkS: number, standS: number) => (hands: Hands) => {
  hands.walk(0, 1.4 * walkS);
  hands.stand(standS);
};

test.each([
  [350, 100],
  [360, 97.5],
  [550, 50],
  [740, 2.5],
  [750, 0],
  [900, 0],
])('standing %i s of 1,000 gives %f', (standS, score) => {
  expect(moves(walkThenStand(1_000 - standS, standS)).score).toBeCloseTo(score, 1);
});

test('a sweep of 40 pulse intervals is a look round, one of 41 is standing', () => {
  const withSweep = (seconds: number) =>
    moves((hands) => {
      walkThenStand(650, 350)(hands);
      hands.walk(180, 14);
      hands.sweep(seconds);
      hands.walk(180, 14);
    }).score!;
  // The turning is seen over half a second, so that a sweep of s seconds measures up to half a second more.
  expect(withSweep(39)).toBe(100);
  expect(withSweep(41)).toBeLessThan(97);
});

test('a sweep made on the move is walking', () => {
  const onTheMove = moves((hands) => {
    hands.sweep(30, 0);
    walkThenStand(0, 100)(hands);
    hands.walk(0, 140);
  });
  const plain = moves((hands) => {
    hands.walk(0, 42);
    walkThenStand(0, 100)(hands);
    hands.walk(0, 140);
  });
  expect(onTheMove.score).toBeCloseTo(plain.score!, 0);
});

test('standing before the first sweep or step, and changing the antenna, are left out', () => {
  const score = moves((hands) => {
    hands.stand(500);
    hands.walk(0, 280);
    hands.changeAntenna(300);
    hands.walk(0, 280);
  }).score;
  expect(score).toBe(100);
});

test('a learner who never moves gets 0, not "not shown"', () => {
  expect(moves(({ stand }) => stand(300)).score).toBe(0);
});

test('119 s of hunting show nothing, 121 s do', () => {
  expect(moves(walkThenStand(100, 19)).score).toBeNull();
  expect(moves(walkThenStand(100, 21)).score).toBe(100);
});

test('a long stand is a bad moment that says when, and a long walk a good one', () => {
  const { moments } = moves(walkThenStand(200, 400));
  expect(moments.map(({ good, fromS, toS }) => [good, Math.round(fromS), Math.round(toS)])).toEqual([
    [true, 0, 200],
    [false, 200, 600],
  ]);
  expect(moments[1]!.what).toContain('3:20');
});
