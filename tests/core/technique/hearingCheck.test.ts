import { beforeAll, expect, test } from 'vitest';
import { leastGainDb } from '../../../src/core/ear/leastGain';
import { thresholdDb } from '../../../src/core/ear/loudness';
import type { Action } from '../../../src/core/run/actions';
import { type Exercise, openExercise } from '../../../src/core/run/exercise';
import { beginLive, tickOnce } from '../../../src/core/run/live';
import { entriesOf, readRecording, recordingOf, writeRecording } from '../../../src/core/run/record';
import { replayRun } from '../../../src/core/run/replay';
import { gradeRun } from '../../../src/core/technique/grade';
import { plainScenario } from '../world/fixtureScenario';

let exercise: Exercise;
beforeAll(() => {
  const plain = plainScenario();
  exercise = openExercise(
    plainScenario({
      ground: {
        ...plain.ground,
        sizeM: 1_000,
        cellM: 10,
        relief: { style: 'smooth', strengthM: 5, roughness: 0.1, baseHeightM: 100 },
        water: { lakes: 0, streams: 0 },
        powerLines: [],
        buildings: [],
      },
      start: { at: [300, 300], facingDeg: 45 },
      tags: [{ ...plain.tags[0]!, at: [600, 600], eirpDbm: 0 }],
    }),
  );
});

/** Turns slowly right round at 37 dB of gain, as a run file of someone with this threshold. */
function runFileOf(listenerDb: number): string {
  let live = beginLive(exercise, { thresholdDb: listenerDb });
  const begun: readonly Action[] = [
    { type: 'setGain', gainDb: 37 },
    { type: 'spin', degPerS: 30 },
  ];
  for (let tick = 0; tick < 400; tick++) live = tickOnce(exercise, live, tick === 0 ? begun : []);
  return writeRecording(recordingOf(exercise, live, { name: '', by: 'person', checkedAt: '2026-04-02' }));
}

/** The run that a run file tells, as the grade sees it. */
function told(text: string) {
  const recording = readRecording('run.json', text);
  const run = replayRun(exercise, entriesOf(recording), recording.ticks, { thresholdDb: recording.listener.thresholdDb });
  return { recording, run, least: run.pulses.map(({ truth }) => truth.leastGainDb!), grade: gradeRun(exercise, recording) };
}

test('in quiet the hearing check shifts the threshold decibel by decibel; in loud noise hardly', () => {
  for (const shiftDb of [-10, 10, 20]) {
    const [usual, own] = [0, shiftDb].map((listenerDb) => thresholdDb(-150, { thresholdDb: listenerDb }, 20));
    expect(own! - usual!).toBeCloseTo(shiftDb, 6);
  }
  const inNoise = thresholdDb(-20, { thresholdDb: 10 }, 20) - thresholdDb(-20, { thresholdDb: 0 }, 20);
  expect(inNoise).toBeLessThan(0.5);
});

test('at a strong place the least gain rises by the threshold, decibel by decibel', () => {
  const place = { powerDbm: -70, outsideNoiseDbm: -140, ownNoiseDbm: -136, buzzDbm: -999, pulseMs: 20 };
  const least = (listenerDb: number) => leastGainDb(place, { thresholdDb: listenerDb })!;
  expect(least(10) - least(0)).toBeCloseTo(10, 1);
  expect(least(-10) - least(0)).toBeCloseTo(-10, 1);
});

test("a run file's listener comes back from the file, its least gain 10 dB higher, and its grade counts from there", () => {
  const [usual, hard] = [told(runFileOf(0)), told(runFileOf(10))];
  expect(hard.recording.listener).toEqual({ thresholdDb: 10, checkedAt: '2026-04-02' });
  expect(usual.least.length).toBeGreaterThan(10);
  usual.least.forEach((leastDb, i) => {
    expect(Math.abs(hard.least[i]! - leastDb - 10)).toBeLessThan(1);
  });
  expect([usual.grade.replayMatches, hard.grade.replayMatches]).toEqual([true, true]);
  const [of0, of10] = [usual.grade.habits.quietGain.score!, hard.grade.habits.quietGain.score!];
  expect(of10).toBeGreaterThan(of0 + 10); // the same hands: for the duller ear it was less too much
});
