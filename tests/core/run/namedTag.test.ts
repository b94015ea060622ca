import { expect, test } from 'vitest';
import { begin } from '../../../src/core/run/begin';
import { step } from '../../../src/core/run/step';
import { soughtTag } from '../../../src/core/run/task';
import { InputFaults } from '../../../src/core/scenario/faults';
import { loadScenario } from '../../../src/core/scenario/load';
import { digestOf } from '../../../src/core/scenario/seal';
import { gradeReplay } from '../../../src/core/technique/grade';
import { handmadeRun, MIDDLE, out } from '../technique/handmadeRun';
import { plainScenario } from '../world/fixtureScenario';

const [ewe] = plainScenario().tags;
const ram = { ...ewe!, name: 'Ram', at: [2_400, 1_000] as [number, number], frequencyMHz: 150.125 };
const any = plainScenario({ tags: [ewe!, ram] });
const ramOnly = plainScenario({ tags: [ewe!, ram], task: { kind: 'find', tag: 1 } });

const saidAt = (scenario: typeof any, [eM, nM]: readonly [number, number]) =>
  step(scenario, { ...begin(scenario), at: { eM, nM } }, { type: 'declare' });

test('where any tag counts each of them is a find, as it always was', () => {
  for (const { at } of any.tags) {
    const { ending, declarations } = saidAt(any, at);
    expect([ending, declarations[0]!.right, declarations[0]!.otherTag]).toEqual(['found', true, null]);
  }
});

test('where one tag is asked for, "here" at another is told as such and does not count', () => {
  const atEwe = saidAt(ramOnly, ewe!.at);
  expect([atEwe.ending, atEwe.declarations[0]!.right, atEwe.declarations[0]!.otherTag]).toEqual([null, false, 0]);
  expect(atEwe.declarations[0]!.offM).toBeCloseTo(Math.hypot(2_400 - 2_050, 900), 0);
  const atNone = saidAt(ramOnly, [100, 100]);
  expect([atNone.ending, atNone.declarations[0]!.otherTag]).toEqual([null, null]);
  expect(saidAt(ramOnly, ram.at).ending).toBe('found');
});

test('the outcome counts declarations at another tag, and says nothing of them where there were none', () => {
  const evidence = handmadeRun(({ stand }) => stand(10), { scenario: ramOnly });
  const wrong = { atTick: 40, at: MIDDLE, right: false, offM: 900, otherTag: 0 };
  const run = { ...evidence.run, state: { ...evidence.run.state, declarations: [wrong, { ...wrong, otherTag: null }] } };
  expect(gradeReplay({ ...evidence, run }, {}).outcome).toMatchObject({ declarations: 2, atOtherTag: 1, found: false });
  expect(gradeReplay(evidence, {}).outcome).not.toHaveProperty('atOtherTag');
});

test('the guess pin is measured from the tag that is asked for, whatever the dial is on', () => {
  const scenario = { ...ramOnly, tags: [ewe!, { ...ram, at: [4_000, 4_100] as [number, number] }] };
  const evidence = handmadeRun(({ stand }) => stand(10), { scenario });
  const run = { ...evidence.run, state: { ...evidence.run.state, guess: out(0, 40) } };
  expect(gradeReplay({ ...evidence, run }, {}).outcome.guessErrorM).toBe(60);
});

test('a task left out is no part of the digest, and asks for the first tag in rehearsals', () => {
  expect(digestOf(any)).toBe(digestOf({ ...any, task: undefined }));
  expect([soughtTag(any), soughtTag(ramOnly)]).toEqual([0, 1]);
  expect(loadScenario('a.json', JSON.stringify(ramOnly))).toEqual(ramOnly);
});

test.each([
  [{ kind: 'find', tag: 2 }, 'a.json: task.tag: tag 2 is asked for, and there are 2 tags, numbers 0 to 1. Mend: name one of them'],
  [{ kind: 'find', tag: 'Ram' }, 'a.json: task.tag: '],
  [{ kind: 'chase' }, 'a.json: task.kind: '],
])('task %j is refused at its field', (task, line) => {
  expect(() => loadScenario('a.json', JSON.stringify({ ...any, task }))).toThrow(InputFaults);
  expect(() => loadScenario('a.json', JSON.stringify({ ...any, task }))).toThrow(line);
});
