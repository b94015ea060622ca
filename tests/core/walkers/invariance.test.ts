import { expect, test } from 'vitest';
import { replayRun } from '../../../src/core/run/replay';
import { outlookOf } from '../../../src/core/technique/outlook';
import { playWalker } from '../../../src/core/walkers/play';
import { steady } from '../../../src/core/walkers/steady';
import { OTHER_HANDS } from '../../../src/core/walkers/validityHands';
import { runScores } from '../../../src/core/walkers/validityRun';
import { turnedEvidence } from '../../../src/core/walkers/validityTurned';
import { openField } from './openField';

const exercise = openField();
const run = playWalker(exercise, steady, 2);
const outlook = outlookOf(exercise.world);
const scores = runScores({ exercise, run }, outlook);

/** Largest difference of a habit; not shown both times is none. */
const apart = (other: typeof scores): number =>
  Math.max(...Object.entries(scores).map(([id, score]) => Math.abs((score ?? -1) - (other[id as keyof typeof scores] ?? -1))));

test('a run and its ground turned by 37 degrees score within 1 point', () => {
  const turned = turnedEvidence({ exercise, run }, 37);
  expect(turned.evidence.run.state.at).not.toEqual(run.state.at);
  expect(apart(runScores(turned.evidence, turned.outlook))).toBeLessThanOrEqual(1);
});

test('a log turned without its ground is another walk: headings against bearings stay, places do not', () => {
  const { evidence } = turnedEvidence({ exercise, run }, 90);
  const mark = run.state.notebook[0]!;
  expect(Math.abs(evidence.run.state.notebook[0]!.bearingDeg - ((mark.bearingDeg + 90) % 360))).toBeLessThan(1e-9);
});

test.each(OTHER_HANDS.map((hands) => [hands.id, hands] as const))('the same intent by %s scores within 1 point', (_id, hands) => {
  const again = replayRun(exercise, hands.logOf(run, exercise), run.state.tick, run.listener);
  expect(again.log).not.toEqual(run.log);
  expect(apart(runScores({ exercise, run: again }, outlook))).toBeLessThanOrEqual(1);
});
