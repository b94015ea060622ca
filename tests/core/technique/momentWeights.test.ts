import { expect, test } from 'vitest';
import { fullLooks } from '../../../src/core/technique/fullLook';
import { movesPart } from '../../../src/core/technique/movesPart';
import { spreadsPart } from '../../../src/core/technique/spreadsPart';
import { walkEvidence } from '../../../src/core/technique/walkEvidence';
import { type Hands, handmadeOutlook, handmadeRun, out } from './handmadeRun';

// What a learner is shown first is decided by these weights: seconds lost, or what a fault of that size is held to be worth (our choice).

const walkOf = (script: (hands: Hands) => void) => walkEvidence(handmadeRun(script, { startAt: out(180, 1_500) }), handmadeOutlook());

test('a stand weighs its seconds, a walk a quarter of them', () => {
  const { moments } = movesPart(
    walkOf((hands) => {
      hands.walk(0, 1.4 * 200);
      hands.stand(80);
    }),
  );
  expect(moments.map(({ good, weight }) => [good, Math.round(weight)])).toEqual([
    [true, 50],
    [false, 80],
  ]);
});

/** Reads at places this many metres out; at 15 dB of least gain 40 m apart are asked for. */
const readings = (placesM: readonly number[]) =>
  spreadsPart(
    walkEvidence(
      handmadeRun((hands) => {
        for (const m of placesM) {
          hands.walkTo(out(0, m));
          hands.mark(0);
          hands.stand(5);
        }
      }),
      handmadeOutlook(),
    ),
  ).moments;

test('a pair far enough apart weighs 30, one without marks 60, one with half of them 30 and is a fault', () => {
  expect(readings([0, 60, 120]).map(({ good, weight }) => [good, weight])).toEqual([
    [true, 30],
    [true, 30],
  ]);
  const close = readings([0, 20, 40]);
  expect(close.map(({ good, weight }) => [good, Math.round(weight)])).toEqual([
    [false, 60],
    [false, 60],
  ]);
  expect(readings([0, 30, 60]).map(({ good, weight }) => [good, Math.round(weight)])).toEqual([
    [false, 30],
    [false, 30],
  ]);
});

test('a first bearing out of a narrow arc outweighs one out of a look all round, and the moment begins 20 s before it, never before the run', () => {
  const run = handmadeRun((hands) => {
    hands.stand(8);
    hands.mark(0);
    hands.walkTo(out(90, 200));
    hands.stand(30);
    hands.mark(0);
  });
  const { moments, score } = fullLooks(run, []);
  expect(score).toBe(0);
  expect(moments.map(({ weight, good }) => [weight, good])).toEqual([
    [90, false],
    [90, false],
  ]);
  expect(moments[0]).toMatchObject({ fromS: 0, toS: 8 });
  expect(moments[1]!.toS - moments[1]!.fromS).toBe(20);
});
