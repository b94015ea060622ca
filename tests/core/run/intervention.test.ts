import { expect, test } from 'vitest';
import { resumed } from '../../../src/browser/resumeRun';
import { rowOf } from '../../../src/core/club/rowOf';
import { marksOf } from '../../../src/core/club/tableRow';
import type { Action } from '../../../src/core/run/actions';
import { begin } from '../../../src/core/run/begin';
import { openExercise } from '../../../src/core/run/exercise';
import { changesAt, hintText, isHeldUp, LONGEST_HINT } from '../../../src/core/run/intervention';
import { actedAtRest, beginLive, type Live, tickOnce } from '../../../src/core/run/live';
import { backgroundNow } from '../../../src/core/run/pulse';
import { entriesOf, heardMatches, readRecording, recordingOf, writeRecording } from '../../../src/core/run/record';
import { replayRun } from '../../../src/core/run/replay';
import { step } from '../../../src/core/run/step';
import { smallField } from '../club/smallField';
import { plainScenario } from '../world/fixtureScenario';

const exercise = openExercise(smallField('watched', [640, 610], 120));

function played(ticks: number, plan: Readonly<Record<number, readonly Action[]>>, open = exercise): Live {
  let live = beginLive(open);
  for (let tick = 0; tick < ticks; tick++) live = tickOnce(open, live, plan[tick] ?? []);
  return live;
}

test('a tag made weaker by 12 dB brings 12 dB less from the next pulse on, and no other pulse', () => {
  const plain = played(200, {});
  const weakened = played(200, { 100: [{ type: 'weaken', tag: 0, byDb: 12 }] });
  expect(weakened.pulses.length).toBe(plain.pulses.length);
  for (const [i, { truth, heard }] of weakened.pulses.entries()) {
    const lossDb = heard.atS < 5 ? 0 : 12;
    expect(truth.powerDbm).toBeCloseTo(plain.pulses[i]!.truth.powerDbm - lossDb, 1);
    expect(truth.bestPowerDbm).toBeCloseTo(plain.pulses[i]!.truth.bestPowerDbm - lossDb, 1);
  }
  // Least gain rises by as much: a weaker tag is not too much gain.
  const [before, after] = [plain.pulses.at(-1)!.truth, weakened.pulses.at(-1)!.truth];
  expect(after.leastGainDb! - before.leastGainDb!).toBeCloseTo(12, 0);
});

test('strength comes back with 0 dB, and values out of range come to the range’s end', () => {
  const run = played(120, {
    10: [{ type: 'weaken', tag: 0, byDb: 500 }],
    60: [{ type: 'weaken', tag: 0, byDb: -3 }],
  });
  expect(changesAt(run.state.interventions, 30).weakenedDb.get(0)).toBe(60);
  expect(changesAt(run.state.interventions, 60).weakenedDb.get(0)).toBe(0);
  const plain = played(120, {});
  expect(run.pulses.at(-1)).toEqual(plain.pulses.at(-1));
});

test('what changes nothing is not kept: another tag, the same value, an empty hint, a second pair of eyes', () => {
  const { interventions } = played(30, {
    1: [{ type: 'weaken', tag: 4, byDb: 6 }],
    2: [{ type: 'weaken', tag: 0, byDb: 0 }],
    3: [{ type: 'raiseLineNoise', byDb: 0 }],
    4: [{ type: 'hint', text: ' \n ' }],
    5: [{ type: 'holdUp', held: false }],
    6: [{ type: 'watch' }],
    7: [{ type: 'watch' }],
  }).state;
  expect(interventions).toEqual([{ atTick: 6, deed: { type: 'watch' } }]);
});

test('line noise raised by 10 dB is 10 dB more buzz and no other noise', () => {
  const withLine = openExercise(
    plainScenario({
      ground: {
        sizeM: 1_000,
        relief: { style: 'smooth', strengthM: 1, roughness: 0, baseHeightM: 100 },
        water: { lakes: 0, streams: 0 },
        buildings: [],
        powerLines: [
          {
            voltage: 'medium',
            route: [
              [100, 500],
              [900, 500],
            ],
            spanM: 200,
            supportHeightM: 12,
            wireHeightM: 10,
            conductors: 3,
          },
        ],
      },
      tags: [{ ...plainScenario().tags[0]!, at: [500, 800] }],
      start: { at: [500, 420], facingDeg: 0 },
      kit: { startGainDb: 30 },
    }),
  );
  const quiet = begin(withLine.scenario);
  const loud = step(withLine.scenario, quiet, { type: 'raiseLineNoise', byDb: 10 });
  const [before, after] = [backgroundNow(withLine, quiet), backgroundNow(withLine, loud)];
  expect(before.buzzDb).toBeLessThan(-20); // far from the limiter, where decibels add up
  expect(after.buzzDb - before.buzzDb).toBeCloseTo(10, 0);
  expect(after.noiseDb).toBeCloseTo(before.noiseDb, 1);
});

test('a hint is one line that is read while walking', () => {
  expect(hintText('  Up the\nbank \t first ')).toBe('Up the bank first');
  expect([...hintText('𝄞'.repeat(400))].length).toBe(LONGEST_HINT);
});

test('what is done while the run rests takes no time and stands before what the next tick brings', () => {
  let live = played(50, {});
  live = actedAtRest(exercise, live, [{ type: 'holdUp', held: true }]);
  expect([live.state.tick, isHeldUp(live.state.interventions)]).toEqual([50, true]);
  live = actedAtRest(exercise, live, [
    { type: 'weaken', tag: 0, byDb: 20 },
    { type: 'holdUp', held: false },
  ]);
  for (let tick = 50; tick < 150; tick++) live = tickOnce(exercise, live, tick === 50 ? [{ type: 'turn', toDeg: 80 }] : []);
  const again = replayRun(exercise, live.log, 150, live.listener);
  expect(again.pulses).toEqual(live.pulses);
  expect(again.state).toEqual(live.state);
});

test('a run that was kept while it was stopped comes back stopped and as weak as it was', () => {
  let live = played(50, { 20: [{ type: 'turn', toDeg: 30 }] });
  live = actedAtRest(exercise, live, [
    { type: 'weaken', tag: 0, byDb: 20 },
    { type: 'holdUp', held: true },
  ]);
  const { log, pulses, state } = live;
  const scenario = exercise.scenario;
  const kept = { scenario, log, pulses, tick: state.tick, thresholdDb: 0, checkedAt: null, begunAt: '2026-05-12T19:30:05+02:00' };
  expect(resumed(exercise, kept).live.state).toEqual(state);
});

test('a run with all of it comes back from its file, replays, and says so in the club’s table', () => {
  const live = played(300, {
    5: [{ type: 'watch' }],
    40: [{ type: 'turn', toDeg: 45 }],
    90: [{ type: 'hint', text: 'Turn the antenna slowly: the tag lies behind the wood' }],
    120: [
      { type: 'weaken', tag: 0, byDb: 9 },
      { type: 'holdUp', held: true },
      { type: 'holdUp', held: false },
    ],
    200: [{ type: 'raiseLineNoise', byDb: 15 }],
    280: [{ type: 'giveUp' }],
  });
  const recording = readRecording('a run', writeRecording(recordingOf(exercise, live, { name: 'Rowan', by: 'person' })));
  const replay = replayRun(exercise, entriesOf(recording), recording.ticks, live.listener);
  expect(heardMatches(recording, replay)).toBe(true);
  expect(replay.state.interventions).toEqual(live.state.interventions);
  const row = rowOf(exercise, recording);
  expect([row.mark, row.withInstructor, marksOf(row)]).toEqual(['checked', true, 'checked, with an instructor']);
});

test('a tag that was said to be weaker and was not is found by the replay', () => {
  const live = played(300, { 100: [{ type: 'weaken', tag: 0, byDb: 9 }], 280: [{ type: 'giveUp' }] });
  const recording = recordingOf(exercise, live, { name: 'Rowan', by: 'person' });
  const edited = { ...recording, log: recording.log.filter(([, { type }]) => type !== 'weaken') };
  expect(rowOf(exercise, edited).mark).toBe('does not replay');
});
