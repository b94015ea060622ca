import { expect, test } from 'vitest';
import { mergedBooks } from '../../../src/core/logbook/book';
import { cardOf, recallOf } from '../../../src/core/logbook/card';
import { addDays, type Day, daysBetween } from '../../../src/core/logbook/day';
import type { SessionRecord } from '../../../src/core/logbook/record';
import { keptShare, type Memory, type Recall, recalled } from '../../../src/core/logbook/schedule';
import { dueOn, todaysCard } from '../../../src/core/logbook/today';
import { randomFor } from '../../../src/core/random/draw';
import { DAY_ONE, onDay, sessionOn } from './handmadeBook';

/** The published model FSRS-6 with its default weights, written out from memory, beside the library. */
const W = [
  0.212, 1.2931, 2.3065, 8.2956, 6.4133, 0.8334, 3.0194, 0.001, 1.8722, 0.1666, 0.796, 1.4835, 0.0614, 0.2629, 1.6483, 0.6014, 1.8729,
];
const DECAY = -0.1542;
const FACTOR = 0.9 ** (1 / DECAY) - 1;
const GRADE: Readonly<Record<Recall, number>> = { again: 1, hard: 2, good: 3, easy: 4 };
const hardness = (grade: number) => Math.min(10, Math.max(1, W[4]! - Math.exp((grade - 1) * W[5]!) + 1));
type State = { readonly s: number; readonly d: number };
function model(before: State | null, days: number, recall: Recall): State {
  const grade = GRADE[recall];
  if (!before) return { s: W[grade - 1]!, d: hardness(grade) };
  const r = (1 + (FACTOR * days) / before.s) ** DECAY;
  const bent = before.d + (-W[6]! * (grade - 3) * (10 - before.d)) / 9;
  const d = Math.min(10, Math.max(1, W[7]! * (W[4]! - Math.exp(3 * W[5]!) + 1) + (1 - W[7]!) * bent));
  if (recall === 'again') {
    const s = W[11]! * before.d ** -W[12]! * ((before.s + 1) ** W[13]! - 1) * Math.exp(W[14]! * (1 - r));
    return { s: Math.min(s, before.s), d };
  }
  const bonus = recall === 'hard' ? W[15]! : recall === 'easy' ? W[16]! : 1;
  return { s: before.s * (1 + Math.exp(W[8]!) * (11 - before.d) * before.s ** -W[9]! * (Math.exp((1 - r) * W[10]!) - 1) * bonus), d };
}

/** Days to wait after an answer: the model's, whole, with a worse answer's wait always shorter by a day at least. */
function modelWait(before: State | null, days: number, recall: Recall): number {
  const whole = (one: Recall) => Math.min(90, Math.max(1, Math.round(model(before, days, one).s)));
  const hardLess = Math.min(whole('again'), whole('hard'));
  const hard = Math.max(whole('hard'), hardLess + 1);
  const good = Math.max(whole('good'), hard + 1);
  return Math.min(90, { again: hardLess, hard, good, easy: Math.max(whole('easy'), good + 1) }[recall]);
}

test.each([...Array(20).keys()])('practice %i: the scheduler keeps what the published model says', (seed) => {
  const random = randomFor(`fsrs-${seed}`, 'test');
  let [memory, state, day]: [Memory | null, State | null, Day] = [null, null, DAY_ONE];
  for (let i = 0; i < 8; i++) {
    const days = i === 0 ? 0 : 1 + Math.floor(20 * random());
    day = addDays(day, days);
    const recall = (['again', 'hard', 'good', 'good', 'easy'] as const)[Math.floor(5 * random())]!;
    memory = recalled(memory, day, recall);
    state = model(state, days, recall);
    expect(memory.card.stability / state.s).toBeCloseTo(1, 2);
    expect(Math.abs(keptShare(memory, addDays(day, 5)) - (1 + (FACTOR * 5) / state.s) ** DECAY)).toBeLessThan(0.005);
  }
});

test('nothing waits longer than 90 days, a better answer never less than a worse one', () => {
  for (const recalls of [['good'], ['good', 'good', 'easy', 'easy', 'easy', 'easy']] as const) {
    let [memory, day]: [Memory | null, Day] = [null, DAY_ONE];
    for (const recall of recalls) {
      const waits = (['again', 'hard', 'good', 'easy'] as const).map((one) => daysBetween(day, recalled(memory, day, one).dueDay));
      expect(waits).toEqual([...waits].sort((a, b) => a - b));
      expect(Math.max(...waits)).toBeLessThanOrEqual(90);
      memory = recalled(memory, day, recall);
      day = memory.dueDay;
    }
  }
});

test('shares of right answers are again, hard, good, easy at 0.5, 0.7 and 0.9', () => {
  expect([0.49, 0.5, 0.69, 0.7, 0.9, 0.91].map(recallOf)).toEqual(['again', 'hard', 'hard', 'good', 'good', 'easy']);
});

const DRILLS = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h', 'i', 'j'];

test('thirty days: every day the due list is that of the model, and the card is due ones first, at most three new, at most ten minutes', () => {
  const random = randomFor('thirty days', 'test');
  const dues = new Map<string, { state: State; last: Day; due: Day }>();
  let book: readonly SessionRecord[] = [];
  let [most, checked] = [0, 0];
  for (let offset = 0; offset < 30; offset++) {
    const day = onDay(offset);
    const expected = DRILLS.filter((drill) => dues.has(drill) && dues.get(drill)!.due <= day);
    expect([
      day,
      dueOn(book, DRILLS, day)
        .map(({ drill }) => drill)
        .sort(),
    ]).toEqual([day, expected]);
    checked += expected.length;
    const card = todaysCard(book, DRILLS, day);
    most = Math.max(most, card.length);
    expect(card.filter(({ because }) => because === 'new').length).toBeLessThanOrEqual(3);
    expect(card.slice(0, expected.length).every(({ because }) => because === 'due')).toBe(true);
    if (offset % 7 >= 5) continue; // four or five days a week
    for (const { drill } of card) {
      const rightShare = [0.4, 0.6, 0.8, 0.8, 1][Math.floor(5 * random())]!;
      book = mergedBooks(book, [sessionOn(day, drill, { rightShare })]) as readonly SessionRecord[];
      const before = dues.get(drill) ?? null;
      const days = before ? daysBetween(before.last, day) : 0;
      const recall = recallOf(rightShare);
      const wait = modelWait(before?.state ?? null, days, recall);
      dues.set(drill, { state: model(before?.state ?? null, days, recall), last: day, due: addDays(day, wait) });
    }
    expect(todaysCard(book, DRILLS, day).every(({ done }) => done)).toBe(true);
  }
  expect(most).toBe(6);
  expect(checked).toBeGreaterThan(20);
  expect(dues.size).toBe(10);
});

test('a second session on the same day changes no date; one before its date moves it', () => {
  const first = [sessionOn(onDay(0), 'a')];
  const again = [...first, sessionOn(onDay(0), 'a', { rightShare: 0.1 })];
  expect(cardOf(again, 'a').memory!.dueDay).toBe(cardOf(first, 'a').memory!.dueDay);
  const early = cardOf([...first, sessionOn(onDay(1), 'a')], 'a');
  expect(early.dues).toHaveLength(1);
  expect(early.memory!.dueDay > cardOf(first, 'a').memory!.dueDay).toBe(true);
});

test('the staircase goes on where the last session left it', () => {
  const book = [sessionOn(onDay(0), 'a', { level: 6, streak: 1 }), sessionOn(onDay(3), 'a', { level: 4.5, streak: 0 })];
  expect(cardOf(book, 'a').stair).toEqual({ level: 4.5, streak: 0, erred: true });
  expect(cardOf(book, 'b')).toMatchObject({ stair: null, memory: null, dues: [] });
});

test('the first day: three new drills in the order in which they are taught', () => {
  expect(todaysCard([], DRILLS, DAY_ONE).map(({ drill, because }) => `${drill} ${because}`)).toEqual(['a new', 'b new', 'c new']);
});
