import { expect, test } from 'vitest';
import { readingsOf } from '../../../src/core/technique/readings';
import { sweepsOf } from '../../../src/core/technique/sweeps';
import { turnDeg } from '../../../src/core/units/angles';
import { type Knobs, knobRun } from './knobRun';

/** A run heard loudest at a heading of 90 degrees. */
function readings(script: (knobs: Knobs) => void) {
  const made = knobRun(script);
  const pulses = made.run.pulses.map((pulse) => {
    const { headingDeg } = made.run.states[Math.floor(pulse.heard.atS * 20)]!.hold;
    return { ...pulse, heard: { ...pulse.heard, audible: true, loudnessDb: 30 - Math.abs(turnDeg(90, headingDeg)) / 10 } };
  });
  const evidence = { ...made, run: { ...made.run, pulses } };
  return readingsOf(evidence, sweepsOf(evidence.run.states, 1));
}

test('a sweep that comes back to the loudest heading and holds it is a reading of that heading', () => {
  const taken = readings((knobs) => {
    knobs.turn(150);
    knobs.turn(-60);
    knobs.wait(4);
  });
  expect(taken.map(({ bearingDeg, marked }) => [Math.round(bearingDeg), marked])).toEqual([[90, false]]);
});

test('a sweep that ends where the hand happens to rest is none', () => {
  const rest = (knobs: Knobs) => {
    knobs.turn(360);
    knobs.wait(6);
  };
  expect(readings(rest)).toEqual([]);
});

test('a mark is a reading wherever it points, and replaces the sweep it came from', () => {
  const taken = readings((knobs) => {
    knobs.turn(90);
    knobs.wait(4);
    knobs.mark();
  });
  expect(taken.map(({ marked }) => marked)).toEqual([true]);
});

test('held for a second only, it is not a reading', () => {
  const taken = readings((knobs) => {
    knobs.turn(90);
    knobs.wait(1.5);
  });
  expect(taken).toEqual([]);
});

test('held for two seconds and a half after the hand stopped, it is one', () => {
  const taken = readings((knobs) => {
    knobs.turn(90);
    knobs.wait(2.7);
  });
  expect(taken).toHaveLength(1);
});

test('the heading held at the end counts up to 30 degrees off the loudest, and not beyond', () => {
  const heldOffDeg = (offDeg: number) =>
    readings((knobs) => {
      knobs.turn(90);
      knobs.wait(1.2); // long enough for a pulse here, too short to end the sweep
      knobs.turn(offDeg);
      knobs.wait(4);
    });
  expect(heldOffDeg(28)).toHaveLength(1);
  expect(heldOffDeg(33)).toEqual([]);
});
