import { expect, test } from 'vitest';
import { notebookFix } from '../../../src/core/fix/notebookFix';
import type { Action } from '../../../src/core/run/actions';
import { begin } from '../../../src/core/run/begin';
import { openExercise } from '../../../src/core/run/exercise';
import { beginLive, tickOnce } from '../../../src/core/run/live';
import { pennedMarks } from '../../../src/core/run/penned';
import { readRecording, recordingOf, writeRecording } from '../../../src/core/run/record';
import type { RunState } from '../../../src/core/run/state';
import { step } from '../../../src/core/run/step';
import { gradeReplay } from '../../../src/core/technique/grade';
import { bearingDeg } from '../../../src/core/units/frames';
import { handmadeRun, MIDDLE, out } from '../technique/handmadeRun';
import { plainScenario } from '../world/fixtureScenario';

const night = plainScenario({ aids: { ownPosition: false } });
const doing = (state: RunState, ...actions: readonly Action[]) => actions.reduce((now, action) => step(night, now, action), state);
const first = begin(night);

test('in the dark one begins at the start, and a bearing is drawn from where one says to be', () => {
  expect(first.belief).toEqual({ at: { eM: 600, nM: 500 }, walkedM: 0 });
  const walked = { ...first, at: { eM: 700, nM: 500 }, walkedM: 100 };
  const marked = doing(walked, { type: 'mark' }, { type: 'believe', at: { eM: 690, nM: 520 } }, { type: 'mark' });
  expect(marked.belief).toEqual({ at: { eM: 690, nM: 520 }, walkedM: 100 });
  expect(marked.notebook.map(({ at }) => at)).toEqual([walked.at, walked.at]);
  expect(pennedMarks(marked.notebook).map(({ at }) => at)).toEqual([
    { eM: 600, nM: 500 },
    { eM: 690, nM: 520 },
  ]);
});

test('where the map shows the own place nothing is believed, and marks are as they always were', () => {
  const day = begin(plainScenario());
  expect(step(plainScenario(), day, { type: 'believe', at: { eM: 1, nM: 1 } })).toBe(day);
  const [mark] = step(plainScenario(), day, { type: 'mark' }).notebook;
  expect(Object.keys(mark!).sort()).toEqual(['at', 'atTick', 'attenuatorDb', 'bearingDeg', 'gainDb', 'struckOut']);
  expect(pennedMarks([mark!])).toEqual([mark]);
});

test('true bearings drawn from places 100 m off give a fix 100 m off', () => {
  const marks = [0, 90].map((alongDeg) => {
    const at = out(alongDeg, 900);
    const believedAt = { eM: at.eM + 100, nM: at.nM };
    return { atTick: 0, at, believedAt, bearingDeg: bearingDeg(at, MIDDLE), gainDb: 40, attenuatorDb: 0, struckOut: false };
  });
  const fix = notebookFix(pennedMarks(marks));
  expect([Math.round(fix.x! - MIDDLE.eM), Math.round(fix.y! - MIDDLE.nM)]).toEqual([100, 0]);
  const scenario = plainScenario({
    aids: { ownPosition: false },
    task: { kind: 'fix' },
    tags: [{ ...night.tags[0]!, at: [MIDDLE.eM, MIDDLE.nM] }],
  });
  const evidence = handmadeRun(({ stand }) => stand(5), { scenario });
  const end = step(scenario, { ...evidence.run.state, notebook: marks }, { type: 'declareFix' });
  const { outcome } = gradeReplay({ ...evidence, run: { ...evidence.run, state: end } }, {});
  expect(outcome).toMatchObject({ fix: { offM: 100 }, placeErrorM: 100, bearingErrorDeg: 0 });
});

test('what was said of the own place is in the run file', () => {
  const exercise = openExercise(
    plainScenario({
      ...night,
      ground: { ...night.ground, sizeM: 1_000, powerLines: [], buildings: [] },
      tags: [{ ...night.tags[0]!, at: [800, 800] }],
    }),
  );
  let live = beginLive(exercise);
  for (let tick = 0; tick < 4; tick++) live = tickOnce(exercise, live, tick === 2 ? [{ type: 'believe', at: { eM: 620, nM: 480 } }] : []);
  const read = readRecording('run.json', writeRecording(recordingOf(exercise, live, { name: '', by: 'person' })));
  expect(read.log).toEqual([[2, { type: 'believe', at: { eM: 620, nM: 480 } }]]);
});
