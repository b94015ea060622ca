import { expect, test } from 'vitest';
import { DRILLS, drillById } from '../../../src/core/drills/catalogue';
import { drawn } from '../../../src/core/drills/drawn';
import type { Answer, Trial } from '../../../src/core/drills/drill';
import { cutSweeps } from '../../../src/core/drills/faintEdge';
import { plainView } from '../../../src/core/drills/plainView';
import { beginSession, hintNow, isOver, nextTrial, numberOf, withAnswer } from '../../../src/core/drills/session';
import { twoSidedTest, whichSide } from '../../../src/core/drills/whichSide';
import { heardAt } from '../../../src/core/listening/air';
import { GAIN, onDial } from '../../../src/core/listening/settings';
import { turnDeg } from '../../../src/core/units/angles';
import { IDEAL, numbersOf, POOR } from './simulatedListener';

const LISTENER = { thresholdDb: 0 };
const all = DRILLS.map((drill) => [drill.title, drill] as const);
/** Hillsides and wires cost a march over the ground: fewer of them are drawn. */
const SLOW = new Set(['true-or-bounce', 'which-side']);
const numbersIn = (value: unknown): number[] =>
  typeof value === 'number' ? [value] : value && typeof value === 'object' ? Object.values(value).flatMap(numbersIn) : [];

test('there are ten, each with an address of its own', () => {
  expect(DRILLS.length).toBe(10);
  expect(new Set(DRILLS.map(({ id }) => id)).size).toBe(10);
  expect(drillById('how-far')?.title).toBe('How far');
  expect(drillById('no-such')).toBeNull();
});

test.each(all)('%s: the same seed draws the same situation, another seed another one', (_title, drill) => {
  const [a, again, b] = ['one', 'one', 'two'].map((seed) => drill.draw(seed, drill.ladder.first, LISTENER)) as [Trial, Trial, Trial];
  expect(again.start).toEqual(a.start);
  expect(again.truth).toEqual(a.truth);
  expect([b.start, b.truth.picture]).not.toEqual([a.start, a.truth.picture]);
});

test.each(all)(
  '%s: every level between its ends can be drawn, is heard at the start or by turning, and every number is one',
  (_title, drill) => {
    const { hardest, first, easiest } = drill.ladder;
    for (const [i, level] of (SLOW.has(drill.id) ? [hardest, easiest] : [hardest, first, easiest]).entries()) {
      const trial = drill.draw(`ends-${i}`, level, LISTENER);
      expect(trial.level).toBeGreaterThan(0);
      // What is asked for is what is drawn, to a tenth or half a unit.
      expect(Math.abs(trial.level - level)).toBeLessThanOrEqual(Math.max(0.7, 0.1 * level));
      for (const { gainDb } of [trial.start, trial.truth.settings])
        expect(Math.abs(onDial(GAIN, gainDb) - gainDb)).toBeLessThanOrEqual(0.5);
      const around = Array.from({ length: 36 }, (_, k) => heardAt(trial.air(trial.start), trial.start, 10 * k));
      expect(around.some(({ audible }) => audible)).toBe(true);
      for (const number of numbersIn([trial.truth.picture, trial.start, trial.plan?.(trial.start, [])]))
        expect(Number.isFinite(number)).toBe(true);
      expect(`${trial.ask}${trial.hint}${trial.truth.said}`).not.toMatch(/NaN|undefined|Infinity|null/);
    }
  },
);

test.each(all)('%s: the truth is judged right, and what was so is told in a sentence', (_title, drill) => {
  const trial = drill.draw('truth', drill.ladder.first, LISTENER);
  const answers = trueAnswers(trial);
  const judged = answers.map((answer) => trial.judge(answer, []));
  expect(judged.filter(({ right }) => right)).toHaveLength(1);
  for (const { because, error } of judged) {
    expect(because).not.toMatch(/NaN|undefined|Infinity/);
    expect(because.length).toBeGreaterThan(10);
    expect(Number.isFinite(error)).toBe(true);
  }
});

/** Both choices, or the true answer beside one far off. */
function trueAnswers(trial: Trial): readonly Answer[] {
  const { answer, truth } = trial;
  if (answer.kind === 'choice') return answer.choices.map((_, choice) => ({ kind: 'choice', choice }));
  if (answer.kind === 'setting') {
    const off = { ...truth.settings, headingDeg: truth.settings.headingDeg + 180, gainDb: 90, offsetHz: truth.settings.offsetHz + 1_500 };
    // Where a bearing is asked for the true gain is some way over least gain, where gain is asked for it is least gain.
    return [truth.settings, off].map((settings) => ({ kind: 'setting', settings }));
  }
  if (answer.kind === 'amount') {
    const m = Number(/over (\d+) m/.exec(truth.said)![1]);
    return [m, 5 * m].map((amount) => ({ kind: 'amount', amount }));
  }
  const tag = truth.picture.marks.find(({ kind }) => kind === 'tag') as { readonly at: readonly [number, number] };
  return [
    { kind: 'pin', at: tag.at },
    { kind: 'pin', at: [900, 900] },
  ];
}

test.each(all)('%s: an ideal and a poor listener are told apart by its number within ten sessions', (_title, drill) => {
  const sessions = SLOW.has(drill.id) ? 4 : 10;
  const seeds = SLOW.has(drill.id) ? ['a'] : ['a', 'b'];
  const mean = (numbers: readonly number[]) => numbers.reduce((sum, number) => sum + number, 0) / numbers.length;
  // The first sessions come down from where everybody begins.
  const late = (hands: typeof IDEAL) => seeds.flatMap((seed) => numbersOf(drill, hands, sessions, seed).slice(1));
  const [ideal, poor] = [late(IDEAL), late(POOR)];
  const spread = (numbers: readonly number[]) => mean(numbers.map((number) => (number - mean(numbers)) ** 2)) / numbers.length;
  const apart = mean(poor) - mean(ideal);
  expect([drill.id, apart > 2 * Math.sqrt(spread(ideal) + spread(poor)), apart, mean(ideal), mean(poor)]).toEqual([
    drill.id,
    true,
    expect.any(Number),
    expect.any(Number),
    expect.any(Number),
  ]);
});

test('hints: at every trial of two sessions, at every other of two, then none; none in a check', () => {
  const drill = drillById('louder-or-softer')!;
  const shares = [0, 1, 2, 3, 4, 9].map((sessionsBefore) => hintShare(sessionsBefore, 'practice'));
  expect(shares).toEqual([1, 1, 0.5, 0.5, 0, 0]);
  expect(hintShare(0, 'check')).toBe(0);
  function hintShare(sessionsBefore: number, kind: 'practice' | 'check'): number {
    let session = beginSession(drill, { seed: 'hints', kind, sessionsBefore });
    let hints = 0;
    while (!isOver(session)) {
      if (hintNow(session)) hints++;
      const trial = nextTrial(session, LISTENER);
      session = withAnswer(session, trial, { right: true, error: 0, because: '' });
    }
    return hints / drill.trials;
  }
});

test('a session of a choosing drill gives the level answered right, one of a setting drill the middle error', () => {
  const set = drillById('two-edge-bearing')!;
  let session = beginSession(set, { seed: 'numbers' });
  for (const error of [9, 1, 5]) session = withAnswer(session, nextTrial(session, LISTENER), { right: error < 6, error, because: '' });
  expect(numberOf(session)).toBe(5);
  const choose = drillById('louder-or-softer')!;
  const answering = (right: boolean) => {
    let one = beginSession(choose, { seed: 'numbers' });
    while (!isOver(one)) one = withAnswer(one, nextTrial(one, LISTENER), { right, error: 0, because: '' });
    return numberOf(one);
  };
  expect(answering(true)).toBeLessThan(2);
  expect(answering(false)).toBeGreaterThan(6);
});

test('find the faint edge: a knob turned while the antenna turns is a cut, one after the other is none', () => {
  const { start } = drillById('faint-edge')!.draw('cuts', 5, LISTENER);
  const at = (atS: number, offDeg: number, offDb: number) => ({
    atS,
    settings: { ...start, headingDeg: start.headingDeg + offDeg, gainDb: start.gainDb + offDb },
  });
  expect(cutSweeps([at(0, 0, 0), at(0.2, 6, 0), at(0.4, 6, -2)])).toBeGreaterThan(0);
  expect(cutSweeps([at(0, 0, 0), at(0.2, 30, 0), at(2, 30, -2), at(2.2, 30, -6)])).toBe(0);
  expect(cutSweeps([at(0, 0, 0), at(0.2, 2, 0), at(0.4, 2, -2)])).toBe(0);
});

test('which side: across the line the gain stays as it was set before', () => {
  const trial = whichSide.draw('held', 12, LISTENER);
  const across = trial.allowed!(trial.start, { ...trial.start, walkM: 60, gainDb: 5 });
  expect([across.walkM, across.gainDb]).toEqual([60, trial.start.gainDb]);
  expect(trial.allowed!(across, { ...across, gainDb: 5 }).gainDb).toBe(trial.start.gainDb);
  expect(trial.allowed!(trial.start, { ...trial.start, gainDb: 5 }).gainDb).toBe(5);
});

test('which side: the two-sided test at a faint gain tells the side, at full gain hardly', () => {
  const trial = whichSide.draw('test', 12, LISTENER);
  const gap = (gainDb: number) => {
    const { hereDb, acrossDb } = twoSidedTest(trial, gainDb);
    return Math.abs(hereDb - acrossDb);
  };
  expect(gap(trial.start.gainDb - 20)).toBeGreaterThan(9);
  expect(gap(90)).toBeLessThan(gap(trial.start.gainDb - 20));
});

test('how far: the table of the drill holds: 10 dB at 500 m, 22 at 1,000 m, 34 at 2,000 m, within 3 dB', () => {
  for (const [m, gainDb] of [
    [500, 10],
    [1_000, 22],
    [2_000, 34],
  ] as const)
    expect(Math.abs(plainView(drawn(`table-${m}`), { fromM: m, toM: m + 1 }).leastDb() - gainDb)).toBeLessThan(3);
});

test('true or bounce: the false side swings more than the true one, as it is heard', () => {
  const trial = drillById('true-or-bounce')!.draw('swing', 25, LISTENER);
  const end = trial.dials.find(({ key }) => key === 'walkM')!.to;
  const right = [0, 1].find((choice) => trial.judge({ kind: 'choice', choice }, []).right)!;
  const swings = trial.marks!(trial.start).map(({ deg }) => {
    const peak = (walkM: number) => {
      const air = trial.air({ ...trial.start, walkM });
      const near = Array.from({ length: 111 }, (_, i) => deg - 55 + i);
      return near.reduce((best, one) => (air.powerDbm(one, 0) > air.powerDbm(best, 0) ? one : best), deg);
    };
    return Math.abs(turnDeg(peak(0), peak(end)));
  });
  expect(swings[1 - right]! - swings[right]!).toBeGreaterThan(10);
});
