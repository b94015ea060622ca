import { beforeAll, expect, test } from 'vitest';
import { type Exercise, openExercise } from '../../../src/core/run/exercise';
import { type Guessed, type Refutation, refutationOf } from '../../../src/core/run/refutation';
import { ruledOutSquares, squaresIn } from '../../../src/core/run/ruleOut';
import type { Hold, Mark } from '../../../src/core/run/state';
import type { Scenario } from '../../../src/core/scenario/schema';
import { distanceM } from '../../../src/core/units/frames';
import { plainScenario } from '../world/fixtureScenario';
import { shapedWorld } from '../world/shapedWorld';

const SIZE_M = 2_000;
const AT = { eM: 1_000, nM: 400 };
const HOLD: Hold = { headingDeg: 0, rollDeg: 0, raised: false, antenna: 'yagi3' };
const scenarioWith = (tag: Partial<Scenario['tags'][number]>): Scenario => {
  const plain = plainScenario({ ground: { sizeM: SIZE_M, cellM: 10, powerLines: [], buildings: [] } });
  return { ...plain, tags: [{ ...plain.tags[0]!, heightM: 0.5, eirpDbm: -10, at: [1_000, 1_400], ...tag }] };
};
const flat = shapedWorld(() => 100, SIZE_M);
const ridge = shapedWorld((_, nM) => 100 + Math.max(0, 40 - Math.abs(nM - 600)), SIZE_M);
const pit = shapedWorld((eM, nM) => (Math.hypot(eM - 1_000, nM - 1_700) < 40 ? 100 : 160), SIZE_M);

const guess = (pin: Guessed['pin'], notebook: readonly Mark[] = []): Guessed => ({
  pin,
  at: AT,
  tag: 0,
  hold: HOLD,
  notebook,
  tick: 100,
  listener: { thresholdDb: 0 },
});
const listen = (refutation: Refutation) => {
  if (refutation.kind !== 'listen') throw new Error(`expected where to listen, got ${refutation.kind}`);
  return refutation;
};
const mark = (gainDb: number, more: Partial<Mark> = {}): Mark => ({
  atTick: 1,
  at: AT,
  bearingDeg: 0,
  gainDb,
  attenuatorDb: 0,
  struckOut: false,
  ...more,
});

let open: Exercise;
beforeAll(() => {
  open = openExercise(scenarioWith({}), flat);
});

test('on open ground one listens from here, straight at the pin, and a farther pin needs more gain', () => {
  const near = listen(refutationOf(open, guess({ eM: 1_000, nM: 700 })));
  expect(near.awayM).toBe(0);
  expect(near.headingDeg).toBe(0);
  const far = listen(refutationOf(open, guess({ eM: 1_000, nM: 1_000 })));
  // 40 log of the distance: 12 dB a doubling over flat ground (Bullington, Proc. IRE 35, 1947).
  expect(far.gainDb - near.gainDb).toBeGreaterThanOrEqual(11);
  expect(far.gainDb - near.gainDb).toBeLessThanOrEqual(13);
});

test('at the gain that is said, silence on that heading rules the pin’s ground out, and 8 dB below it does not', () => {
  const pin = { eM: 1_000, nM: 780 };
  const { gainDb, headingDeg } = listen(refutationOf(open, guess(pin)));
  const hatchedAt = (gain: number) =>
    squaresIn(
      ruledOutSquares(open, {
        at: AT,
        atTick: 100,
        around: pin,
        listener: { thresholdDb: 0 },
        silences: [{ atTick: 1, walkedM: 0, hold: { ...HOLD, headingDeg }, controls: { gainDb: gain, attenuatorDb: 0, tunedMHz: 150 } }],
      }),
    );
  expect(hatchedAt(gainDb)).toBeGreaterThan(4);
  expect(hatchedAt(gainDb - 8)).toBeLessThan(hatchedAt(gainDb) / 3);
});

test('behind a ridge one is sent up it; into a pit nobody within reach looks', () => {
  const refutation = listen(refutationOf(openExercise(open.scenario, ridge), guess({ eM: 1_000, nM: 900 })));
  expect(refutation.awayM).toBeGreaterThan(150);
  expect(refutation.higherM).toBeGreaterThan(30);
  expect(refutation.awayDeg < 60 || refutation.awayDeg > 300).toBe(true);
  expect(distanceM(refutation.from, AT)).toBeCloseTo(refutation.awayM, 6);
  expect(refutationOf(openExercise(open.scenario, pit), guess({ eM: 1_000, nM: 1_700 })).kind).toBe('out-of-view');
});

test('a bearing heard at less gain than free space needs speaks against the pin at once; struck out it does not', () => {
  const pin = { eM: 1_000, nM: 1_950 };
  const weak = openExercise(scenarioWith({ eirpDbm: -35 }), flat);
  const refutation = refutationOf(weak, guess(pin, [mark(80), mark(2)]));
  expect(refutation).toMatchObject({ kind: 'too-far', bearing: 2, heardNetDb: 2 });
  expect(refutationOf(weak, guess(pin, [mark(80), mark(2, { struckOut: true })])).kind).not.toBe('too-far');
  expect(refutationOf(weak, guess(pin, [mark(32, { attenuatorDb: 30 })]))).toMatchObject({ kind: 'too-far', heardNetDb: 2 });
});

test('nothing of the truth is in it: wherever the tag lies, however it lies and drifts, the sentence is the same', () => {
  const elsewhere = openExercise(
    scenarioWith({ at: [300, 300], whip: { leanDeg: 85, towardDeg: 10 }, driftHzPerHour: 1_500, decayDbPerHour: 10 }),
    flat,
  );
  const pin = { eM: 1_200, nM: 800 };
  expect(refutationOf(elsewhere, guess(pin, [mark(30)]))).toEqual(refutationOf(open, guess(pin, [mark(30)])));
});
