import { beforeAll, expect, test } from 'vitest';
import { judgeTagCheck, tagCheckSentence } from '../../../src/core/debrief/tagCheckJudged';
import { tuningLossDb } from '../../../src/core/receiver/tuning';
import type { Action, Entry } from '../../../src/core/run/actions';
import { type Exercise, openExercise } from '../../../src/core/run/exercise';
import { beginLive, tickOnce } from '../../../src/core/run/live';
import { entriesOf, readRecording, recordingOf, writeRecording } from '../../../src/core/run/record';
import { replayRun } from '../../../src/core/run/replay';
import { pulseTimeS } from '../../../src/core/run/timetable';
import { loadScenario } from '../../../src/core/scenario/load';
import { digestOf } from '../../../src/core/scenario/seal';
import { smallField } from '../club/smallField';

/** The dial stands 1,600 Hz off: the note at 2,600 Hz is heard, but weakly. */
const field = smallField('tag-check', [420, 430], 300);
const asking = { ...field, tagCheck: true as const, kit: { ...field.kit, startOffsetHz: -1_600, startGainDb: 30 } };
let exercise: Exercise;
beforeAll(() => {
  exercise = openExercise(asking);
});

const tuneBack: Action = { type: 'tune', tunedMHz: asking.tags[0]!.frequencyMHz - 0.001 };
const beats = (everyS: number): readonly Entry[] =>
  Array.from({ length: 6 }, (_, i) => ({
    tick: Math.round((pulseTimeS(asking, 0, 2) + i * everyS) * 20) + 200,
    action: { type: 'beat' } as const,
  }));
const leave: readonly Entry[] = [{ tick: 600, action: { type: 'walk', courseDeg: 45, paceMPerS: 1.5 } }];
const judged = (log: readonly Entry[]) => {
  const sorted = [...log, ...leave].sort((a, b) => a.tick - b.tick);
  return judgeTagCheck({ exercise, run: replayRun(exercise, sorted, 1_400, { thresholdDb: 0 }) })!;
};
const faint = (): number => {
  // The gain at which the first pulses on the clearest note are faint.
  for (let gainDb = 0; gainDb <= 90; gainDb++) {
    let live = beginLive(exercise);
    for (let tick = 0; tick < 120; tick++)
      live = tickOnce(exercise, live, tick === 0 ? [{ type: 'setGain', gainDb }, tuneBack, { type: 'turn', toDeg: 50 }] : []);
    const loud = live.pulses.at(-1)!.heard.loudnessDb;
    if (loud > 8 && loud < 16) return gainDb;
  }
  throw new Error('no gain brings it to a faint level');
};

test('a whole check: clearest note at a faint level, both axes, the rate counted within eight in a hundred', () => {
  const gainDb = faint();
  const perS = 60 / asking.tags[0]!.pulsesPerMinute;
  const log: readonly Entry[] = [
    { tick: 0, action: { type: 'setGain', gainDb } },
    { tick: 0, action: { type: 'turn', toDeg: 50 } },
    { tick: 0, action: tuneBack },
    { tick: 0, action: { type: 'roll', toDeg: 90 } },
    { tick: 80, action: { type: 'setGain', gainDb: gainDb + 20 } },
    { tick: 80, action: { type: 'roll', toDeg: 0 } },
    { tick: 170, action: { type: 'setGain', gainDb } },
    ...beats(perS),
  ];
  const whole = judged(log);
  expect(whole.check).toMatchObject({ note: true, upright: true, flat: true, rate: true });
  expect(tagCheckSentence(whole)).toBe('You checked the tag before leaving.');
  expect(judged([...log.filter(({ action }) => action.type !== 'beat'), ...beats(perS * 1.2)]).check.rate).toBe(false);
});

test('forgotten, the tag is weaker all day by what the dial costs at 2,600 Hz, and the debrief says both', () => {
  const left = judged([{ tick: 0, action: { type: 'setGain', gainDb: 80 } }]);
  expect(left.check.note).toBe(false);
  expect(left.offNoteDb).toBeCloseTo(tuningLossDb(2_600), 1);
  expect(left.offNoteDb!).toBeGreaterThan(3);
  expect(tagCheckSentence(left)).toMatch(/^You left without the clearest note .* Off its note it was heard \d dB weaker on the way\.$/);
});

test('loud, no note is the clearest; beats after leaving count nothing', () => {
  expect(
    judged([
      { tick: 0, action: tuneBack },
      { tick: 0, action: { type: 'setGain', gainDb: 90 } },
    ]).check.note,
  ).toBe(false);
  const late = beats(60 / asking.tags[0]!.pulsesPerMinute).map(({ tick, action }) => ({ tick: tick + 1_050, action }));
  expect(judged(late).check.countedPerMinute).toBeNull();
});

test('an exercise asks for it by one field; without it nothing is asked, and its digest is what it was', () => {
  expect(judgeTagCheck({ exercise: openExercise(field, exercise.world), run: replayRun(exercise, [], 20, { thresholdDb: 0 }) })).toBeNull();
  expect(digestOf(loadScenario('a.json', JSON.stringify(field)))).toBe(digestOf(field));
  expect(loadScenario('a.json', JSON.stringify(asking)).tagCheck).toBe(true);
  expect(() => loadScenario('a.json', JSON.stringify({ ...asking, tagCheck: 'yes' }))).toThrow(/tagCheck.*write true/s);
});

test('beats are kept in the run file, and a beat with something to it is refused', () => {
  let live = beginLive(exercise);
  for (let tick = 0; tick < 60; tick++) live = tickOnce(exercise, live, tick % 20 === 0 ? [{ type: 'beat' }] : []);
  const text = writeRecording(recordingOf(exercise, live, { name: '', by: 'person' }));
  expect(entriesOf(readRecording('run.json', text)).map(({ action }) => action.type)).toEqual(['beat', 'beat', 'beat']);
  expect(() => readRecording('run.json', text.replace('{"type":"beat"}', '{"type":"beat","at":1}'))).toThrow(/log\.0\.1/);
});
