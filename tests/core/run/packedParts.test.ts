import { expect, test } from 'vitest';
import { randomFor } from '../../../src/core/random/draw';
import type { Action } from '../../../src/core/run/actions';
import { openExercise } from '../../../src/core/run/exercise';
import { beginLive, tickOnce } from '../../../src/core/run/live';
import { packedHeard, packedLog, unpackedParts } from '../../../src/core/run/packedParts';
import { RUN_LIMITS, readRecording, recordingOf, runFileOf, writeRecording } from '../../../src/core/run/record';
import { TICKS_PER_S } from '../../../src/core/run/state';
import { InputFaults } from '../../../src/core/scenario/faults';
import { gradeRun } from '../../../src/core/technique/grade';
import { smallField } from '../club/smallField';

const MINUTES = 30;
const MOST_BYTES = 100_000;
/** As the page has it: smaller turns of a compass are trembling, and a turn is told to a tenth of a degree. */
const STILL_DEG = 0.6;

/** Half an hour with the phone as the antenna: turned a third of the time, trembling in the hand all of it, walked and marked now and then. */
function byCompass(minutes: number) {
  const exercise = openExercise(smallField('packed', [640, 610], 60 * minutes + 60));
  const random = randomFor('packed', 'test');
  let live = beginLive(exercise, { thresholdDb: 0 });
  let [pointed, told] = [0, 0];
  for (let tick = 0; tick < minutes * 60 * TICKS_PER_S; tick++) {
    const seconds = tick / TICKS_PER_S;
    if (seconds % 24 < 8) pointed += 45 / TICKS_PER_S;
    const now = pointed + 0.8 * (random() + random() - 1);
    const deeds: Action[] = [];
    if (Math.abs(now - told) >= STILL_DEG) {
      told = now;
      deeds.push({ type: 'turn', toDeg: (Math.round(now * 10) / 10) % 360 });
    }
    if (tick % 480 === 100) deeds.push({ type: 'mark' });
    if (tick % 480 === 200) deeds.push({ type: 'walk', courseDeg: 360 * random(), paceMPerS: 1.4 });
    if (tick % 480 === 420) deeds.push({ type: 'walk', courseDeg: 0, paceMPerS: 0 });
    if (tick % 300 === 50) deeds.push({ type: 'setGain', gainDb: 30 + Math.floor(20 * random()) });
    live = tickOnce(exercise, live, deeds);
  }
  return { exercise, recording: recordingOf(exercise, live, { name: 'Rowan', by: 'person' }) };
}

test('half an hour by a phone’s compass is a file of at most 100 kB, and comes back and replays to the bit', () => {
  const { exercise, recording } = byCompass(MINUTES);
  const text = runFileOf(recording);
  expect(writeRecording(recording).length).toBeGreaterThan(4 * MOST_BYTES);
  expect(text.length).toBeLessThanOrEqual(MOST_BYTES);
  const back = readRecording('packed', text);
  expect(back).toEqual(recording);
  expect(gradeRun(exercise, back)).toMatchObject({ replayMatches: true });
});

test('actions come back to the bit, whatever the hand told: turns to a tenth and finer, over north, in one tick with others', () => {
  const random = randomFor('packed rows', 'test');
  const turn = (toDeg: number) => ({ type: 'turn' as const, toDeg });
  const log: [number, { readonly type: 'turn'; readonly toDeg: number } | { readonly type: 'mark' }][] = [];
  let tick = 0;
  for (let i = 0; i < 4_000; i++) {
    if (random() < 0.7) tick += Math.floor(random() ** 3 * 400);
    const deg = 360 * random();
    log.push([tick, random() < 0.1 ? { type: 'mark' } : turn(random() < 0.9 ? Math.round(deg * 10) / 10 : deg)]);
  }
  log.push([tick, turn(0)], [tick, turn(359.9)], [tick, turn(0.1)], [tick, turn(-12.5)], [tick, turn(360)]);
  expect(unpackedParts('r', { log: packedLog(log) }, RUN_LIMITS)).toEqual({ log });
});

test('a short run stays plain, and of a packed one name, exercise and result can be read by anybody', () => {
  const { recording } = byCompass(1);
  expect(runFileOf(recording)).toBe(writeRecording(recording));
  const long = { ...recording, heard: Array.from({ length: 4_000 }, () => recording.heard[0]!) };
  const shown = JSON.parse(runFileOf(long)) as Record<string, unknown>;
  expect([shown['name'], (shown['scenario'] as { title: string }).title, typeof shown['log']]).toEqual(['Rowan', 'Field packed', 'string']);
});

const faultOf = (part: object): string => {
  const { recording } = byCompass(1);
  try {
    readRecording('r.json', JSON.stringify({ ...recording, ...part }));
    return 'none';
  } catch (fault) {
    if (!(fault instanceof InputFaults)) throw fault;
    return fault.faults.map(({ path, found }) => `${path}: ${found}`).join('; ');
  }
};

test.each([
  ['other letters', { log: 'no packing!' }, /log: letters that no part/],
  ['a part cut off', { heard: packedHeard([[1, 2]]).slice(0, 6) }, /heard: a packed part that is cut off/],
  ['a part that unpacks to no rows', { log: packedHeard([1, { a: 1 }]) }, /log/],
  ['a part that unpacks to no JSON', { log: packedHeard(['x']).replace(/.$/, 'A') }, /log|unexpected/],
  ['a bomb', { heard: packedHeard([' '.repeat(9_000_000)]) }, /heard: more than the 8000000 characters/],
])('%s is refused where it stands', (_what, part, found) => {
  expect(faultOf(part)).toMatch(found);
});
