import { expect, test } from 'vitest';
import type { Action } from '../../../src/core/run/actions';
import { openExercise } from '../../../src/core/run/exercise';
import { beginLive, type Live, tickOnce } from '../../../src/core/run/live';
import { replayRun } from '../../../src/core/run/replay';
import { groundFaults } from '../../../src/core/run/soundness';
import { briefNow, type StagePlan } from '../../../src/core/run/stages';
import { InputFaults } from '../../../src/core/scenario/faults';
import { scenarioFrom } from '../../../src/core/scenario/load';
import type { Scenario } from '../../../src/core/scenario/schema';
import { canonicalText } from '../../../src/core/scenario/seal';
import { smallField } from '../club/smallField';

const field = smallField('in parts', [640, 610], 600);
const withStages = (stages: readonly StagePlan[], more: Partial<Scenario> = {}): Scenario => ({ ...field, ...more, stages: [...stages] });
/** All of them on the one ground: it is made once. */
const { world } = openExercise(field);

function played(scenario: Scenario, ticks: number, plan: Readonly<Record<number, readonly Action[]>>): Live {
  const exercise = openExercise(scenario, world);
  let live = beginLive(exercise);
  for (let tick = 0; tick < ticks; tick++) live = tickOnce(exercise, live, plan[tick] ?? []);
  return live;
}

const cameAt = ({ state }: Live): readonly number[] => state.stages.map(({ atTick }) => atTick);
const NORTH: Action = { type: 'walk', courseDeg: 0, paceMPerS: 1.6 };
const mark: Action = { type: 'mark' };

test('a text comes with the last of its bearings, those struck out not counted, and the next counts from there', () => {
  const scenario = withStages([
    { after: { kind: 'bearings', count: 2 }, text: 'second' },
    { after: { kind: 'bearings', count: 1 }, text: 'third' },
  ]);
  const live = played(scenario, 200, { 10: [mark], 20: [{ type: 'strikeOut', mark: 0 }], 30: [mark], 60: [mark], 90: [mark] });
  expect(cameAt(live)).toEqual([61, 91]);
  expect([briefNow(scenario, null), briefNow(scenario, live.state)]).toEqual([scenario.brief, 'third']);
});

test('a pin, metres walked, a place and seconds each bring their text, counted from the text before', () => {
  const scenario = withStages([
    { after: { kind: 'pin' }, text: 'walk' },
    { after: { kind: 'walked', m: 10 }, text: 'go there' },
    { after: { kind: 'reached', at: [field.start.at[0], field.start.at[1] + 40], withinM: 10 }, text: 'wait' },
    { after: { kind: 'time', s: 5 }, text: 'done' },
  ]);
  const live = played(scenario, 900, {
    0: [NORTH],
    200: [{ type: 'guess', at: { eM: 500, nM: 500 } }],
    700: [{ type: 'walk', courseDeg: 0, paceMPerS: 0 }],
  });
  const [pin, walked, reached, waited] = live.state.stages;
  expect(pin!.atTick).toBe(201);
  expect(walked!.walkedM - pin!.walkedM).toBeGreaterThanOrEqual(10);
  expect(walked!.walkedM - pin!.walkedM).toBeLessThan(10.2); // a tick's walk over
  expect(reached!.atTick).toBeGreaterThanOrEqual(walked!.atTick);
  expect(waited!.atTick - reached!.atTick).toBe(100);
});

test('texts of which several are due come in one tick, and none comes after the end', () => {
  const due: StagePlan = { after: { kind: 'reached', at: field.start.at, withinM: 50 }, text: 'here' };
  expect(cameAt(played(withStages([due, due]), 3, {}))).toEqual([1, 1]);
  const ended = played(withStages([{ after: { kind: 'time', s: 10 }, text: 'late' }]), 400, { 100: [{ type: 'giveUp' }] });
  expect(cameAt(ended)).toEqual([]);
});

test('an exercise in parts replays to the same state, and one without has none', () => {
  const scenario = withStages([{ after: { kind: 'walked', m: 20 }, text: 'on' }]);
  const live = played(scenario, 500, { 5: [NORTH], 400: [mark] });
  const again = replayRun(openExercise(scenario, world), live.log, 500, live.listener);
  expect(again.state).toEqual(live.state);
  expect(cameAt(played(field, 300, { 0: [NORTH] }))).toEqual([]);
});

const faultsOf = (scenario: unknown): readonly string[] => {
  try {
    scenarioFrom('a file', JSON.parse(canonicalText(scenario as Scenario)));
    return [];
  } catch (fault) {
    if (!(fault instanceof InputFaults)) throw fault;
    return fault.faults.map(({ path }) => path);
  }
};

test('texts that can never come are faults of the file', () => {
  const outside = withStages([{ after: { kind: 'reached', at: [1_500, 200], withinM: 30 }, text: 'there' }]);
  expect(faultsOf(outside)).toEqual(['stages.0.after.at']);
  expect(faultsOf(withStages([{ after: { kind: 'on-foot' }, text: 'walk' }]))).toEqual(['stages.0.after.kind']);
  const gone: StagePlan = { after: { kind: 'pin' }, text: 'walk', vehicleGoes: true };
  expect(faultsOf(withStages([gone]))).toEqual(['stages.0.vehicleGoes']);
  const vehicle = { limits: { ...field.limits, vehicle: true } };
  expect(faultsOf(withStages([gone], vehicle))).toEqual([]);
  expect(faultsOf(withStages([gone, { after: { kind: 'on-foot' }, text: 'too late' }], vehicle))).toEqual(['stages.1.after.kind']);
  expect(faultsOf(withStages([{ after: { kind: 'time', s: 5 }, text: 'soon' }]))).toEqual(['stages.0.after.s']);
  const barn = { at: [500, 500], lengthM: 60, widthM: 60, alongDeg: 0, heightM: 6, walls: 'stone' } as const;
  const within = withStages([{ after: { kind: 'reached', at: [500, 500], withinM: 30 }, text: 'there' }], {
    ground: { ...field.ground, buildings: [{ ...barn, at: [500, 500] }] },
  });
  expect(groundFaults('a file', within).map(({ path }) => path)).toEqual(['stages.0.after.at']);
});
