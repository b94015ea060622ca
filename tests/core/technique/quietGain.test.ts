import { expect, test } from 'vitest';
import { excessMark, quietGain } from '../../../src/core/technique/quietGain';
import { type Knobs, knobRun, LEAST_DB } from './knobRun';

const scoreOf = (script: (knobs: Knobs) => void, turnedDeg = 0) => quietGain.judge(knobRun(script, turnedDeg));
const sweeps = (knobs: Knobs, count = 3) => {
  for (let i = 0; i < count; i++) {
    knobs.turn(180);
    knobs.wait(4);
  }
};

test.each([
  [0, 1],
  [10, 1],
  [20, 0.5],
  [29, 0.05],
  [30, 0],
  [45, 0],
])('an excess of %f dB is worth %f', (excessDb, mark) => {
  expect(excessMark(excessDb, false)).toBeCloseTo(mark, 10);
});

test('a saturated beep is worth nothing whatever its excess', () => {
  expect(excessMark(8, true)).toBe(0);
});

test('a run at least gain + 8 dB scores 100, at + 20 dB 50, at + 32 dB 0', () => {
  const at = (excessDb: number) =>
    scoreOf((knobs) => {
      knobs.gain(LEAST_DB + excessDb);
      sweeps(knobs);
    }).score;
  expect(at(8)).toBeCloseTo(100, 6);
  expect(at(20)).toBeGreaterThan(45);
  expect(at(20)).toBeLessThan(55);
  expect(at(32)).toBeLessThan(5);
});

test('silence for 15 s is finding the floor, for longer it is worth nothing', () => {
  const silent = (seconds: number) =>
    scoreOf((knobs) => {
      knobs.gain(LEAST_DB + 5);
      sweeps(knobs, 3);
      knobs.gain(LEAST_DB - 5);
      knobs.wait(seconds);
    });
  expect(silent(14).score).toBeCloseTo(100, 6);
  expect(silent(18).score!).toBeLessThan(95);
  expect(silent(60).score!).toBeLessThan(45);
});

test('after a saturated sweep the gain must come down: within 10 s full marks, after 60 s none', () => {
  const cutAfter = (seconds: number) =>
    scoreOf((knobs) => {
      knobs.gain(LEAST_DB + 60);
      knobs.turn(180);
      knobs.wait(seconds);
      knobs.gain(LEAST_DB + 5);
      knobs.wait(20);
      sweeps(knobs);
    }).components['timeToCut'];
  expect(cutAfter(8)).toBe(100);
  // The sweep is seen to end a sixth of a second after the hand stops.
  expect(cutAfter(35)).toBeGreaterThan(49.5);
  expect(cutAfter(35)).toBeLessThan(51.5);
  expect(cutAfter(70)).toBe(0);
});

test('the time to cut counts a quarter beside the excess', () => {
  const { score, components } = scoreOf((knobs) => {
    knobs.gain(LEAST_DB + 60);
    knobs.turn(180);
    knobs.wait(35);
    knobs.gain(LEAST_DB + 20);
    sweeps(knobs, 6);
  });
  const [excess, cut] = [components['excess']!, components['timeToCut']!];
  expect(Math.abs(excess - cut)).toBeGreaterThan(10);
  expect(score).toBeCloseTo(0.75 * excess + 0.25 * cut, 9);
});

test('the attenuator answers saturation as gain does, and three decibels do; two do not', () => {
  const answered = (answer: (knobs: Knobs) => void) =>
    scoreOf((knobs) => {
      knobs.gain(LEAST_DB + 60);
      knobs.turn(180);
      knobs.wait(3);
      answer(knobs);
      knobs.wait(90);
    }).components['timeToCut'];
  expect(answered((knobs) => knobs.attenuator(20))).toBe(100);
  expect(answered((knobs) => knobs.gain(LEAST_DB + 58))).toBe(0);
  expect(answered((knobs) => knobs.gain(LEAST_DB + 57))).toBe(100);
});

test('never saturated: time to cut is not shown and does not count', () => {
  const result = scoreOf((knobs) => {
    knobs.gain(LEAST_DB + 12);
    sweeps(knobs);
  });
  expect(result.components['timeToCut']).toBeNull();
  expect(result.score).toBe(result.components['excess']);
});

test('with nothing lower to set, excess is not held against the learner', () => {
  const evidence = knobRun(
    (knobs) => {
      knobs.gain(0);
      knobs.attenuator(30);
      sweeps(knobs);
    },
    0,
    -90,
  );
  expect(quietGain.judge(evidence).score).toBeCloseTo(100, 6);
});

test('without a least gain anywhere the habit is not shown', () => {
  const result = quietGain.judge(knobRun((knobs) => sweeps(knobs), 0, null));
  expect([result.score, result.whyNotShown.length > 10]).toEqual([null, true]);
});

test('pulses while nobody listens do not count: far from sweeps, marks and held headings', () => {
  // The antenna creeps slower than a sweep but never rests: nothing is held, nothing swept.
  const creeping = (knobs: Knobs) => {
    for (let i = 0; i < 60; i++) knobs.turn(i % 2 === 0 ? 6 : -6, 6);
  };
  expect(scoreOf(creeping).score).toBeNull();
});

test('listening reaches 10 s to either side of a mark', () => {
  const creep = (knobs: Knobs, seconds: number) => {
    for (let i = 0; i < seconds; i++) knobs.turn(i % 2 === 0 ? 6 : -6, 6);
  };
  const quietAround = (seconds: number) =>
    scoreOf((knobs) => {
      knobs.gain(LEAST_DB + 40);
      creep(knobs, 12);
      knobs.gain(LEAST_DB + 5);
      creep(knobs, seconds);
      knobs.mark();
      creep(knobs, seconds);
      knobs.gain(LEAST_DB + 40);
      creep(knobs, 12);
    }).score!;
  expect(quietAround(11)).toBeCloseTo(100, 6);
  expect(quietAround(9)).toBeLessThan(97);
});

test('turned by 37 degrees the score is the same', () => {
  const script = (knobs: Knobs) => {
    knobs.gain(LEAST_DB + 17);
    sweeps(knobs);
  };
  expect(scoreOf(script, 37).score).toBeCloseTo(scoreOf(script).score!, 9);
});

test('moments name a time, what happened and what to do', () => {
  const { moments } = scoreOf((knobs) => {
    knobs.gain(LEAST_DB + 26);
    sweeps(knobs, 8);
  });
  const bad = moments.filter(({ good }) => !good);
  expect(bad.length).toBe(2);
  for (const { what, next } of bad) {
    expect(what).toMatch(/^At \d+:\d\d the gain was 2[56] dB above/);
    expect(next).toMatch(/^Lower the gain/);
  }
});
