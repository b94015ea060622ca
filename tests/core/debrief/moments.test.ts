import { expect, test } from 'vitest';
import { bestAndWorst, farthestApart, type Habits, mattersMost, ratedScore, tellingMoment } from '../../../src/core/debrief/moments';
import { HABIT_IDS, type HabitId, type HabitResult, type Moment, notShown } from '../../../src/core/technique/habit';

const moment = (weight: number, good: boolean): Moment => ({
  fromS: weight,
  toS: weight,
  what: `what ${weight}`,
  next: `next ${weight}`,
  weight,
  good,
});
const shown = (score: number, moments: readonly Moment[] = []): HabitResult => ({ score, components: {}, moments, whyNotShown: '' });
const habitsOf = (known: Partial<Record<HabitId, HabitResult>>): Habits =>
  Object.fromEntries(HABIT_IDS.map((id) => [id, known[id] ?? notShown('no chance')])) as Habits;

test('a habit gives its two best and two worst moments, heaviest first', () => {
  const moments = [moment(1, true), moment(5, true), moment(3, true), moment(2, false), moment(9, false), moment(4, false)];
  const { best, worst } = bestAndWorst({ moments });
  expect(best.map(({ weight }) => weight)).toEqual([5, 3]);
  expect(worst.map(({ weight }) => weight)).toEqual([9, 4]);
  expect(tellingMoment({ moments })!.weight).toBe(9);
  expect(tellingMoment({ moments: [moment(1, true)] })!.weight).toBe(1);
  expect(tellingMoment({ moments: [] })).toBeNull();
});

test('what matters most is the next action of the heaviest failing of the weakest habit shown', () => {
  const habits = habitsOf({ quietGain: shown(70, [moment(50, false)]), clearView: shown(20, [moment(3, false), moment(7, false)]) });
  expect(mattersMost(habits)).toMatchObject({ habit: 'clearView', sentence: 'next 7', because: 'what 7' });
});

test('the logbook’s habit never is what matters most of a run', () => {
  const habits = habitsOf({ quietGain: shown(60, [moment(5, false)]), keepPractising: shown(0, [moment(99, false)]) });
  expect(mattersMost(habits).habit).toBe('quietGain');
});

test('where every habit held up, or none was shown, the sentence says so', () => {
  expect(mattersMost(habitsOf({ quietGain: shown(85, [moment(5, false)]) })).sentence).toMatch(/held up/);
  expect(mattersMost(habitsOf({})).sentence).toMatch(/Too short/);
});

test('a rating of 1 to 5 stands for 0 to 100, and only a gap of more than 25 is told', () => {
  expect([1, 2, 3, 4, 5].map(ratedScore)).toEqual([0, 25, 50, 75, 100]);
  const habits = habitsOf({ quietGain: shown(30), clearView: shown(80) });
  expect(farthestApart(habits, { quietGain: 5, clearView: 5 })).toEqual({ habit: 'quietGain', by: 70, over: true });
  expect(farthestApart(habits, { clearView: 2 })).toEqual({ habit: 'clearView', by: 55, over: false });
  expect(farthestApart(habits, { clearView: 5, setThenSweep: 1 })).toBeNull();
  expect(farthestApart(habits, {})).toBeNull();
});
