import { expect, test } from 'vitest';
import { setThenSweep } from '../../../src/core/technique/setThenSweep';
import { sweepsOf } from '../../../src/core/technique/sweeps';
import { type Knobs, knobRun } from './knobRun';

const judged = (script: (knobs: Knobs) => void, turnedDeg = 0) => setThenSweep.judge(knobRun(script, turnedDeg));
const sweepsIn = (script: (knobs: Knobs) => void) => sweepsOf(knobRun(script).run.states, 1);

/** Three sweeps of 200 degrees; in each the knob moves after `cutAtDeg`. */
const cutSweeps = (cutAtDeg: number, change: (knobs: Knobs, i: number) => void) => (knobs: Knobs) => {
  for (let i = 0; i < 3; i++) {
    knobs.turn(cutAtDeg);
    change(knobs, i);
    knobs.turn(200 - cutAtDeg);
    knobs.wait(6);
  }
};
const hands = (cutAtDeg: number, change: (knobs: Knobs, i: number) => void) => judged(cutSweeps(cutAtDeg, change)).components['handsOff'];

test('a turn of 45 degrees is a sweep, of 40 it is not', () => {
  expect(sweepsIn((knobs) => knobs.turn(46)).length).toBe(1);
  expect(sweepsIn((knobs) => knobs.turn(40)).length).toBe(0);
});

test('a turn at 4.5 degrees a second is not a sweep, at 5.5 it is', () => {
  expect(sweepsIn((knobs) => knobs.turn(90, 4.5)).length).toBe(0);
  expect(sweepsIn((knobs) => knobs.turn(90, 5.5)).length).toBe(1);
});

test('point, wait for the beep, go on is one sweep; a rest of more than two and a half pulses makes two', () => {
  const stepping = (restS: number) => (knobs: Knobs) => {
    for (let i = 0; i < 2; i++) {
      knobs.turn(60);
      knobs.wait(restS);
    }
  };
  // Turning is seen over half a second: a rest looks a third of a second shorter than it is.
  expect(sweepsIn(stepping(2.6)).length).toBe(1);
  expect(sweepsIn(stepping(3.1)).length).toBe(2);
});

test('a change while the antenna rests ends the sweep, unspoilt', () => {
  const script = (knobs: Knobs) => {
    for (let i = 0; i < 3; i++) {
      knobs.turn(100);
      knobs.wait(1);
      knobs.gain(20 + 5 * i);
      knobs.wait(1);
      knobs.turn(100);
      knobs.wait(5);
    }
  };
  expect(sweepsIn(script).length).toBe(6);
  expect(judged(script).components['handsOff']).toBe(100);
});

test('a change in a rest of 0.6 s spoils nothing either', () => {
  const script = (knobs: Knobs) => {
    for (let i = 0; i < 3; i++) {
      knobs.turn(100);
      knobs.wait(0.3);
      knobs.gain(20 + 5 * i);
      knobs.wait(0.3);
      knobs.turn(100);
      knobs.wait(5);
    }
  };
  expect(judged(script).components['handsOff']).toBe(100);
});

test('a change in mid-sweep spoils the shorter part: 50 of 200 degrees is a share of a quarter', () => {
  const share = 50 / 200;
  expect(hands(50, (knobs, i) => knobs.gain(20 + 3 * i))).toBeCloseTo((100 * (0.4 - share)) / 0.35, -0.5);
});

test('half spoilt is no habit, a slip of 4.5 % is forgiven, one of 5.3 % is not', () => {
  expect(hands(100, (knobs, i) => knobs.gain(10 + 10 * i))).toBe(0);
  expect(hands(9, (knobs, i) => knobs.gain(10 + 10 * i))).toBe(100);
  expect(hands(10.5, (knobs, i) => knobs.gain(10 + 10 * i))).toBeLessThan(100);
});

test.each([
  ['1.9 dB of gain', (knobs: Knobs, i: number) => knobs.gain(40 + 1.9 * (i + 1)), 100],
  ['2 dB of gain', (knobs: Knobs, i: number) => knobs.gain(40 + 2 * (i + 1)), 0],
  ['90 Hz of tuning', (knobs: Knobs) => knobs.tuneBy(90), 100],
  ['100 Hz of tuning', (knobs: Knobs) => knobs.tuneBy(100), 0],
  ['a step of the attenuator', (knobs: Knobs, i: number) => knobs.attenuator(10 * (i + 1)), 0],
])('%s in mid-sweep', (_what, change, score) => {
  expect(hands(100, change)).toBe(score);
});

test('small steps through one sweep add up', () => {
  const creeping = (knobs: Knobs) => {
    for (let i = 0; i < 3; i++) {
      for (let j = 0; j < 10; j++) {
        knobs.turn(20);
        knobs.gain(40 + (j % 2 === 0 ? j / 2 : 0));
      }
      knobs.wait(6);
    }
  };
  expect(judged(creeping).components['handsOff']).toBe(0);
});

test('two sweeps do not show the habit, three do', () => {
  const count = (n: number) => (knobs: Knobs) => {
    for (let i = 0; i < n; i++) {
      knobs.turn(120);
      knobs.wait(5);
    }
  };
  expect(judged(count(2)).score).toBeNull();
  expect(judged(count(3)).score).toBe(100);
});

test('the first bearing at a new place wants a look all round, the next one there does not', () => {
  const looks = (firstDeg: number) =>
    judged((knobs) => {
      knobs.turn(firstDeg);
      knobs.wait(4);
      knobs.mark();
      knobs.turn(60);
      knobs.wait(4);
      knobs.mark();
      knobs.turn(60);
      knobs.wait(4);
    }).components['fullLook'];
  expect(looks(310)).toBe(100);
  expect(looks(280)).toBe(0);
});

test('a look all round that was cut in its middle is none; arcs that cover the round, each at one setting, are one', () => {
  const looks = (script: (knobs: Knobs) => void) =>
    judged((knobs) => {
      script(knobs);
      knobs.wait(4);
      knobs.mark();
      for (let i = 0; i < 2; i++) {
        knobs.turn(60);
        knobs.wait(4);
      }
    }).components['fullLook'];
  const halves = (restS: number) => (knobs: Knobs) => {
    knobs.turn(175);
    knobs.wait(restS);
    knobs.gain(60);
    knobs.wait(restS);
    knobs.turn(175);
  };
  expect(looks(halves(0))).toBe(0);
  expect(looks(halves(2))).toBe(100);
  const twiceCut = (knobs: Knobs) => {
    halves(0)(knobs);
    knobs.wait(4);
    knobs.turn(-170);
    knobs.gain(40);
    knobs.turn(-180);
  };
  expect(looks(twiceCut)).toBe(0); // the halves left of two spoilt rounds lie side by side, and still nobody heard round
});

test('a place is new 50 m on, not 40', () => {
  const at = (awayM: number) =>
    judged((knobs) => {
      knobs.turn(360);
      knobs.wait(4);
      knobs.mark();
      knobs.jumpTo(600 + awayM, 500);
      knobs.turn(60);
      knobs.wait(4);
      knobs.mark();
      knobs.turn(60);
      knobs.wait(4);
    }).components['fullLook'];
  expect(at(40)).toBe(100);
  expect(at(55)).toBe(50);
});

test('the look counts a quarter', () => {
  const result = judged((knobs) => {
    for (let i = 0; i < 3; i++) {
      knobs.turn(i % 2 === 0 ? 120 : -120);
      knobs.wait(5);
    }
    knobs.mark();
  });
  expect(result.components).toEqual({ handsOff: 100, fullLook: 0 });
  expect(result.score).toBe(75);
});

test('steps of the hand at 10 or 20 a second, and a start turned by 37 degrees, change nothing', () => {
  const by = (everyTicks: number) => (knobs: Knobs) => {
    for (let i = 0; i < 4; i++) {
      knobs.turn(60, 30, everyTicks);
      knobs.gain(30 + 4 * i);
      knobs.turn(140, 30, everyTicks);
      knobs.wait(5);
    }
  };
  const plain = judged(by(1)).score!;
  expect(Math.abs(judged(by(2)).score! - plain)).toBeLessThan(1);
  expect(Math.abs(judged(by(1), 37).score! - plain)).toBeLessThan(1e-6);
});
