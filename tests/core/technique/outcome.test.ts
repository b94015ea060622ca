import { expect, test } from 'vitest';
import type { RunState } from '../../../src/core/run/state';
import type { Outcome } from '../../../src/core/technique/grade';
import { gradeReplay } from '../../../src/core/technique/grade';
import { plainScenario } from '../world/fixtureScenario';
import { handmadeRun, out } from './handmadeRun';

const scenario = plainScenario();
const [tagEastM, tagNorthM] = scenario.tags[0]!.at;
const tag = { eM: tagEastM, nM: tagNorthM };

/** The outcome of half a minute's standing whose last state is changed by hand. */
function outcome(change: (state: RunState) => Partial<RunState>): Outcome {
  const made = handmadeRun((hands) => hands.stand(30.4), { scenario });
  const state = { ...made.run.state, ...change(made.run.state) };
  return gradeReplay({ ...made, run: { ...made.run, state } }, {}).outcome;
}

const mark = (northOfTagM: number, bearingDeg: number, struckOut = false, believedM?: number) => ({
  atTick: 100,
  at: { eM: tag.eM, nM: tag.nM + northOfTagM },
  bearingDeg,
  gainDb: 40,
  attenuatorDb: 0,
  struckOut,
  ...(believedM === undefined ? {} : { believedAt: { eM: tag.eM + believedM, nM: tag.nM + northOfTagM } }),
});

test('nothing done: time alone, and no number where there was nothing to take one from', () => {
  expect(outcome(() => ({}))).toEqual({
    found: false,
    ending: null,
    timeS: 30.4,
    walkedM: 0,
    declarations: 0,
    bearingErrorDeg: null,
    guessErrorM: null,
  });
});

test('what was walked leaves out what was driven, and what was driven is told if any was', () => {
  expect(outcome(() => ({ walkedM: 1_234.4, drivenM: 0 })).walkedM).toBe(1_234);
  expect(outcome(() => ({ walkedM: 1_234.4, drivenM: 0 })).drivenM).toBeUndefined();
  expect(outcome(() => ({ walkedM: 1_234.4, drivenM: 1_000.7 }))).toMatchObject({ walkedM: 234, drivenM: 1_001 });
});

test('the bearing error is the lower median of the bearings that stand, a tenth of a degree', () => {
  // From north of the tag it lies at 180 degrees: 10.26, 3 and 50 off to both sides.
  const marks = [mark(100, 190.26), mark(200, 177), mark(300, 230)];
  expect(outcome(() => ({ notebook: marks })).bearingErrorDeg).toBe(10.3);
  expect(outcome(() => ({ notebook: marks.slice(0, 2) })).bearingErrorDeg).toBe(3);
  expect(outcome(() => ({ notebook: [mark(100, 190.26), mark(200, 177, true), mark(300, 230)] })).bearingErrorDeg).toBe(10.3);
  expect(outcome(() => ({ notebook: [mark(100, 190, true)] })).bearingErrorDeg).toBeNull();
});

test('the error of the own place is the lower median of those told, none where the map shows it', () => {
  const told = [mark(100, 180, false, 40.4), mark(200, 180, false, 7), mark(300, 180, false, 90), mark(400, 180, true, 1)];
  expect(outcome(() => ({ notebook: told })).placeErrorM).toBe(40);
  expect(outcome(() => ({ notebook: told.slice(0, 2) })).placeErrorM).toBe(7);
  expect(outcome(() => ({ notebook: [mark(100, 180)] })).placeErrorM).toBeUndefined();
});

test('the guess pin is measured to the tag, and declarations are counted, those at another tag apart', () => {
  expect(outcome(() => ({ guess: { eM: tag.eM + 30, nM: tag.nM - 40.3 } })).guessErrorM).toBe(50);
  const here = { atTick: 10, at: out(0, 5), right: false, offM: 12, otherTag: null };
  const declarations = [here, { ...here, otherTag: 1 }, here];
  expect(outcome(() => ({ declarations, ending: 'found' }))).toMatchObject({ declarations: 3, atOtherTag: 1, found: true });
  expect(outcome(() => ({ declarations: [here], ending: 'gave-up' })).atOtherTag).toBeUndefined();
  expect(outcome(() => ({ ending: 'gave-up' })).found).toBe(false);
});
