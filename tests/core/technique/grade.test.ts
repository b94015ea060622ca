import { expect, test } from 'vitest';
import { gradeReplay } from '../../../src/core/technique/grade';
import { plainScenario } from '../world/fixtureScenario';
import { type Hands, handmadeRun, minutes, out } from './handmadeRun';

/** Three minutes of standing or walking, with as many sweeps, at an excess of 5 dB. */
const hunting =
  (sweeps: number) =>
  (hands: Hands): void => {
    for (let i = 0; i < sweeps; i++) {
      hands.sweep(4);
      hands.stand(6);
    }
    hands.walkTo(out(0, 100));
    hands.stand(minutes(3));
  };
const graded = (sweeps: number, weights = { quietGain: 1, setThenSweep: 1, walkAndListen: 1, clearView: 1 }) =>
  gradeReplay(handmadeRun(hunting(sweeps), { scenario: plainScenario({ weights }) }), {});

test('technique is the mean of the three habits shown; clear view, not shown, is neither 0 nor 100 in it', () => {
  const { technique, habits } = graded(3);
  expect(habits.clearView.score).toBeNull();
  expect([habits.quietGain.score, habits.setThenSweep.score]).toEqual([100, 100]);
  expect(habits.walkAndListen.score!).toBeLessThan(50);
  expect(technique).toBeCloseTo((200 + habits.walkAndListen.score!) / 3, 9);
});

test('the weights of the exercise count', () => {
  const { technique, habits } = graded(3, { quietGain: 1, setThenSweep: 1, walkAndListen: 3, clearView: 1 });
  expect(technique).toBeCloseTo((200 + 3 * habits.walkAndListen.score!) / 5, 9);
});

test('a run that shows two habits is not ranked', () => {
  const { technique, habits } = graded(2);
  expect([habits.setThenSweep.score, technique]).toEqual([null, null]);
});

test('habit 5 comes from the logbook and never enters technique', () => {
  const evidence = handmadeRun(hunting(3));
  const practised = { daysPractised: 0, longestGapDays: 28, dueShare: 0, largestSkillShare: 1 };
  const [without, idle] = [gradeReplay(evidence, {}), gradeReplay(evidence, { practice: practised })];
  expect([without.habits.keepPractising.score, idle.habits.keepPractising.score]).toEqual([null, 0]);
  expect(idle.technique).toBe(without.technique);
});
