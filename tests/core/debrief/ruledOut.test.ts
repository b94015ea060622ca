import { beforeAll, expect, test } from 'vitest';
import { judgeRuledOut, ruledOutSentence } from '../../../src/core/debrief/ruledOut';
import type { Action } from '../../../src/core/run/actions';
import { type Exercise, openExercise } from '../../../src/core/run/exercise';
import { beginLive, type Live, tickOnce } from '../../../src/core/run/live';
import { crosswiseDbm, levelWaveGainDb } from '../../../src/core/run/nominalReach';
import { entriesOf, heardMatches, readRecording, recordingOf, writeRecording } from '../../../src/core/run/record';
import { replayRun } from '../../../src/core/run/replay';
import { isHatched, type RuleOutAsked, ruledOutSquares, squareAt, squaresIn } from '../../../src/core/run/ruleOut';
import type { Silence } from '../../../src/core/run/silence';
import { TICKS_PER_S } from '../../../src/core/run/state';
import type { Scenario } from '../../../src/core/scenario/schema';
import { gradeReplay } from '../../../src/core/technique/grade';
import { bearingDeg, distanceM } from '../../../src/core/units/frames';
import { pointOver } from '../../../src/core/world/height';
import { isInView } from '../../../src/core/world/inView';
import { COVER } from '../../../src/core/world/world';
import { plainScenario } from '../world/fixtureScenario';
import { shapedWorld } from '../world/shapedWorld';

const SIZE_M = 2_000;
const FROM = { eM: 1_000, nM: 400 };
const scenarioWith = (tags: Partial<Scenario['tags'][number]>[]): Scenario => {
  const plain = plainScenario({ ground: { sizeM: SIZE_M, cellM: 10, powerLines: [], buildings: [] } });
  return {
    ...plain,
    start: { at: [FROM.eM, FROM.nM], facingDeg: 0 },
    tags: tags.map((tag, i) => ({ ...plain.tags[0]!, name: `Tag ${i + 1}`, heightM: 0.5, eirpDbm: -10, at: [1_000, 1_400], ...tag })),
  };
};
const flat = shapedWorld(() => 100, SIZE_M);
/** A wall of earth across the way at 800 m north. */
const ridge = shapedWorld((_, nM) => (nM > 780 && nM < 820 ? 160 : 100), SIZE_M);

const silence = (headingDeg: number, gainDb: number, rollDeg = 0): Silence => ({
  atTick: 0,
  walkedM: 0,
  hold: { headingDeg, rollDeg, raised: false, antenna: 'yagi3' },
  controls: { gainDb, attenuatorDb: 0, tunedMHz: 150 },
});
const round = (gainDb: number, rollDeg = 0) => Array.from({ length: 12 }, (_, i) => silence(30 * i, gainDb, rollDeg));
const asked = (silences: readonly Silence[], around: RuleOutAsked['around'] = null): RuleOutAsked => ({
  at: FROM,
  atTick: 10,
  around,
  silences,
  listener: { thresholdDb: 0 },
});

let exercise: Exercise;
beforeAll(() => {
  exercise = openExercise(scenarioWith([{}]), flat);
});

test('more gain rules out more, a quarter turn of the antenna against the lying tag much less, and silence at no gain nothing', () => {
  const squares = (silences: readonly Silence[]) => squaresIn(ruledOutSquares(exercise, asked(silences)));
  expect(squares(round(60))).toBeGreaterThan(1.5 * squares(round(45)));
  expect(squares(round(45))).toBeGreaterThan(2 * squares(round(45, 90)));
  expect(squares(round(45, 90))).toBeGreaterThan(0);
  expect(squares([])).toBe(0);
});

test('a lying tag at an upright antenna is 20 dB down: its feed line alone picks it up', () => {
  const hold = silence(0, 40).hold;
  const across = levelWaveGainDb(exercise, 0, hold, 0) - levelWaveGainDb(exercise, 0, { ...hold, rollDeg: 90 }, 0);
  expect(across).toBeGreaterThan(19);
  expect(across).toBeLessThan(21);
});

test('only ground that the antenna was turned to is ruled out far off', () => {
  const grid = ruledOutSquares(exercise, asked([silence(0, 55)]));
  const far = [...grid.hatched].flatMap((one, i) => (one === 1 ? [squareAt(grid, i)] : []));
  const ahead = far.filter((place) => Math.abs(((bearingDeg(FROM, place) + 180) % 360) - 180) < 45);
  const behind = far.filter((place) => Math.abs(bearingDeg(FROM, place) - 180) < 45);
  expect(Math.max(...ahead.map((place) => distanceM(FROM, place)))).toBeGreaterThan(
    1.5 * Math.max(0, ...behind.map((place) => distanceM(FROM, place))),
  );
});

test('what a ridge or a wood hides is never ruled out, and by hand only what lies round the place', () => {
  const hidden = ruledOutSquares(openExercise(exercise.scenario, ridge), asked(round(90)));
  const north = [...hidden.hatched].filter((one, i) => one === 1 && squareAt(hidden, i).nM > 840);
  expect(north.length).toBe(0);
  expect(squaresIn(hidden)).toBeGreaterThan(50);
  const around = { eM: 1_100, nM: 600 };
  const byHand = ruledOutSquares(exercise, asked(round(60), around));
  expect(squaresIn(byHand)).toBeGreaterThan(10);
  for (const [i, one] of byHand.hatched.entries()) if (one === 1) expect(distanceM(squareAt(byHand, i), around)).toBeLessThan(121);

  const wood = shapedWorld(
    () => 100,
    SIZE_M,
    10,
    (_, nM) => (nM > 700 && nM < 760 ? COVER.wood : COVER.open),
  );
  expect(isInView(wood, pointOver(wood, FROM, 1.7), { eM: 1_000, nM: 650 }, 0.3)).toBe(true);
  expect(isInView(wood, pointOver(wood, FROM, 1.7), { eM: 1_000, nM: 730 }, 0.3)).toBe(false);
  expect(isInView(wood, pointOver(wood, FROM, 1.7), { eM: 1_000, nM: 900 }, 0.3)).toBe(false);
});

test('the weakest tag of the list decides, and never where it lies', () => {
  const rulesOut = (tags: Parameters<typeof scenarioWith>[0]) =>
    ruledOutSquares(openExercise(scenarioWith(tags), flat), asked(round(45))).hatched;
  const alone = rulesOut([{}]);
  expect(rulesOut([{}, { eirpDbm: -30, at: [300, 300] }])).not.toEqual(alone);
  expect(rulesOut([{}, { eirpDbm: 10, at: [300, 300] }])).toEqual(alone);
  expect(rulesOut([{ at: [200, 1_900], whip: { leanDeg: 5, towardDeg: 80 }, decayDbPerHour: 3, driftHzPerHour: 900 }])).toEqual(alone);
});

// 40 log d: over flat ground far off the level wave falls by 12 dB for each doubling (Bullington, Proc. IRE 35, 1947).
test('over flat ground a level wave falls by 12 dB a doubling of the distance', () => {
  const dbm = (nM: number) => crosswiseDbm(exercise.scenario, flat, 0, { eM: 1_000, nM }, { eM: 1_000, nM: 10 }, 1.7);
  expect(dbm(510) - dbm(1_010)).toBeGreaterThan(11.5);
  expect(dbm(510) - dbm(1_010)).toBeLessThan(12.5);
});

/** Turns once round at a gain, then does what it is given; ends after `ticks`. */
function played(open: Exercise, gainDb: number, then: readonly Action[]): Live {
  let live = beginLive(open);
  const plan: Record<number, readonly Action[]> = {
    0: [
      { type: 'setGain', gainDb },
      { type: 'spin', degPerS: 18 },
    ],
    410: then,
    480: [{ type: 'giveUp' }],
  };
  for (let tick = 0; tick <= 480; tick++) live = tickOnce(open, live, plan[tick] ?? []);
  return live;
}

test('the debrief says whether a tag lay in hatched ground, and a run that ruled ground out keeps pulses and grade', () => {
  // A tag behind the ridge: silence in front of it is true.
  const far = openExercise(scenarioWith([{ at: [1_000, 1_400], eirpDbm: -20 }]), ridge);
  const quiet = played(far, 30, [{ type: 'ruleOut', around: null }]);
  const plain = played(far, 30, []);
  expect(quiet.pulses).toEqual(plain.pulses);

  const recording = recordingOf(far, quiet, { name: 'Rowan', by: 'person' });
  const read = readRecording('run.json', writeRecording(recording));
  const again = replayRun(far, entriesOf(read), read.ticks, quiet.listener);
  expect(heardMatches(read, again)).toBe(true);
  expect(again.state.rulings).toEqual(quiet.state.rulings);
  const ungraded = replayRun(far, plain.log, 481, plain.listener);
  expect(gradeReplay({ exercise: far, run: again }, read)).toEqual(gradeReplay({ exercise: far, run: ungraded }, read));

  const judged = judgeRuledOut({ exercise: far, run: again })!;
  expect(judged.standing).toBe(1);
  expect(judged.wrongly).toBeNull();
  expect(judged.hatchedShare).toBeGreaterThan(0.005);
  expect(judged.couldBeShare).toBeGreaterThanOrEqual(judged.hatchedShare);
  expect(ruledOutSentence(judged, ['Ewe'])).toMatch(/^You ruled out .* of the map, and no tag lay there; .* could have been ruled out\.$/);
});

test('a dial off the note makes silence that rules out ground with the tag in it, and the debrief says so', () => {
  const near = openExercise(scenarioWith([{ at: [1_000, 560], eirpDbm: -10 }]), flat);
  const deaf = played(near, 40, [{ type: 'ruleOut', around: null }]);
  const detuned: Action = { type: 'tune', tunedMHz: near.scenario.tags[0]!.frequencyMHz - 0.009 };
  const log = [{ tick: 0, action: detuned }, ...deaf.log];
  const run = replayRun(near, log, 481, deaf.listener);
  const judged = judgeRuledOut({ exercise: near, run })!;
  expect(judged.wrongly).toEqual({ ruling: 0, atS: 410 / TICKS_PER_S, tag: 0 });
  expect(isHatched(judged.hatched, { eM: 1_000, nM: 560 })).toBe(true);
  expect(ruledOutSentence(judged, ['Ewe'])).toContain('lay in it');

  const back = replayRun(
    near,
    [...log.filter(({ action }) => action.type !== 'giveUp'), { tick: 440, action: { type: 'takeBack', ruling: 0 } }],
    470,
    deaf.listener,
  );
  expect(judgeRuledOut({ exercise: near, run: back })!.wrongly).toBeNull();
});

test.each([
  ['a place off the map', { type: 'ruleOut', around: { eM: 20_000, nM: 0 } }],
  ['no place at all', { type: 'ruleOut' }],
  ['a ruling of no number', { type: 'takeBack', ruling: -1 }],
  ['squares of its own', { type: 'ruleOut', around: null, hatched: [1, 1] }],
])('a run file with %s is refused with the entry’s place', (_, action) => {
  const live = played(exercise, 30, []);
  const file = JSON.parse(writeRecording(recordingOf(exercise, live, { name: '', by: 'person' })));
  file.log[0] = [0, action];
  expect(() => readRecording('run.json', JSON.stringify(file))).toThrow(/run\.json: log\.0\.1/);
});
