import { expect, test } from 'vitest';
import { excessClass, excessShares, excessTrack } from '../../../src/core/debrief/excessTrack';
import { POSES_PER_S, posesEndS, posesOf, stateAt } from '../../../src/core/debrief/poses';
import { offTheTag, rowAt, timelineOf } from '../../../src/core/debrief/timeline';
import { distanceM } from '../../../src/core/units/frames';
import { handmadeRun, MIDDLE } from '../technique/handmadeRun';
import { type Knobs, knobRun, LEAST_DB } from '../technique/knobRun';

const knobs = (script: (knobs: Knobs) => void) => knobRun(script);

test('a timeline has one row a pulse: gain less attenuation in use, least gain, and the difference as excess', () => {
  const run = knobs((hand) => {
    hand.gain(40);
    hand.wait(5);
    hand.attenuator(10);
    hand.wait(5);
  });
  const timeline = timelineOf(run);
  expect(timeline.timeS.length).toBe(run.run.pulses.length);
  expect([timeline.netGainDb[1], timeline.netGainDb.at(-1)]).toEqual([40, 30]);
  expect(timeline.leastGainDb.every((db) => db === LEAST_DB)).toBe(true);
  timeline.netGainDb.forEach((net, i) => {
    expect(timeline.excessDb[i]).toBeCloseTo(net - LEAST_DB, 9);
  });
});

test('only pulses of the tag that the dial is on are in the timeline', () => {
  const run = knobs((hand) => hand.wait(10));
  const other = run.run.pulses.map((pulse, i) => (i % 2 === 0 ? pulse : { ...pulse, truth: { ...pulse.truth, tag: 1 } }));
  const timeline = timelineOf({ ...run, run: { ...run.run, pulses: other } });
  expect(timeline.timeS.length).toBe(Math.ceil(other.length / 2));
});

test('the row at a time is that of the last pulse at or before it, -1 before the first', () => {
  const timeline = { timeS: [0.25, 1.25, 2.25] };
  expect([0, 0.25, 1.2, 1.25, 99].map((s) => rowAt(timeline, s))).toEqual([-1, 0, 0, 1, 2]);
});

test('places between two rows of poses lie within 0.2 m of where the walker was, headings turn the short way over north', () => {
  const run = handmadeRun((hands) => {
    hands.walkTo({ eM: 4_030, nM: 4_040 });
    hands.sweep(20);
  });
  const poses = posesOf(run.run.states);
  expect(posesEndS(poses)).toBeCloseTo(Math.ceil(run.run.state.tick / 4) / POSES_PER_S, 9);
  for (let tick = 3; tick < run.run.states.length; tick += 7) {
    const [told, was] = [stateAt(run.exercise.scenario, poses, tick / 20), run.run.states[tick]!];
    expect(distanceM(told.at, was.at)).toBeLessThan(0.2);
  }
  const halfway = stateAt(
    run.exercise.scenario,
    { ...poses, headingDeg: Float64Array.from(poses.headingDeg, (_, i) => (i === 0 ? 350 : 20)) },
    0.1,
  );
  expect(halfway.hold.headingDeg).toBeCloseTo(5, 9);
});

test.each([
  [-0.1, false, 'silent'],
  [0, false, 'quiet'],
  [10, false, 'quiet'],
  [10.1, false, 'loud'],
  [30, false, 'loud'],
  [30.1, false, 'flat-out'],
  [5, true, 'flat-out'],
  [null, false, 'unknown'],
] as const)('an excess of %s dB, saturated %s, is %s', (excessDb, flatOut, kind) => {
  expect(excessClass(excessDb, flatOut)).toBe(kind);
});

test('the track is cut where the excess changes class, its pieces join, and their length is the way walked', () => {
  const run = handmadeRun((hands) => hands.walk(90, 100), { leastGainDb: () => 15 });
  const halves = run.run.pulses.map((pulse, i) => ({ ...pulse, truth: { ...pulse.truth, excessDb: i < 30 ? 5 : 20 } }));
  const evidence = { ...run, run: { ...run.run, pulses: halves } };
  const pieces = excessTrack(timelineOf(evidence), posesOf(run.run.states));
  expect(pieces.map(({ kind }) => kind)).toEqual(['quiet', 'loud']);
  expect(pieces[1]!.points[0]).toEqual(pieces[0]!.points.at(-1));
  const walked = pieces.flatMap(({ points }) => points.slice(1).map((at, i) => distanceM(points[i]!, at)));
  expect(walked.reduce((a, b) => a + b, 0)).toBeCloseTo(distanceM(MIDDLE, run.run.state.at), 6);
  expect(excessShares(timelineOf(evidence))).toMatchObject({ silent: 0, 'flat-out': 0 });
  expect(excessShares(timelineOf(evidence)).quiet).toBeCloseTo(30 / halves.length, 9);
});

test('headings are told as turns from the tag, clockwise positive, also across north', () => {
  expect(offTheTag([10, 350, 180], [350, 10, 0])).toEqual([20, -20, 180]);
});
