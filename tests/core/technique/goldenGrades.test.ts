import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type Exercise, openExercise } from '../../../src/core/run/exercise';
import { entriesOf, type Practice } from '../../../src/core/run/record';
import { type Replay, replayRun } from '../../../src/core/run/replay';
import { loadScenario } from '../../../src/core/scenario/load';
import { type Grade, gradeReplay } from '../../../src/core/technique/grade';
import { WALKERS } from '../../../src/core/walkers/catalogue';
import { deaf } from '../../../src/core/walkers/deaf';
import { lowLying } from '../../../src/core/walkers/lowLying';
import { playWalker } from '../../../src/core/walkers/play';
import { steady } from '../../../src/core/walkers/steady';
import { weathercock } from '../../../src/core/walkers/weathercock';
import { goldenAnswers } from '../../golden/goldenAnswers';
import { honestRun } from '../../tampering/honestRuns';
import { smallField } from '../club/smallField';

const PATH = 'tests/core/technique/goldenGrades.json';
const DRAWN_HANDS = 10;

/** Wood, a line, a house and a wall: every part of every habit has its chance. */
function builtField(seed: string) {
  const scenario = smallField(seed, [720, 640], 420);
  const { ground } = scenario;
  return openExercise({
    ...scenario,
    ground: {
      ...ground,
      relief: { ...ground.relief, strengthM: 60 },
      cover: { ...ground.cover, wood: 0.25, wet: 0.05, rock: 0.05 },
      powerLines: [
        {
          voltage: 'medium',
          route: [
            [100, 520],
            [900, 480],
          ],
          spanM: 100,
          supportHeightM: 10,
          wireHeightM: 8,
          conductors: 3,
        },
      ],
      buildings: [{ at: [420, 400], lengthM: 16, widthM: 9, alongDeg: 20, heightM: 5, walls: 'metal' }],
    },
  });
}

const gradeOf = (exercise: Exercise, run: Replay, practice?: Practice): Told =>
  told(gradeReplay({ exercise, run }, practice ? { practice } : {}));

type Told = Readonly<Record<string, unknown>>;
/** What a club's table and a debrief say of a run. */
const told = ({ technique, outcome, habits }: Omit<Grade, 'replayMatches'>): Told => ({
  technique,
  outcome,
  habits: Object.fromEntries(
    Object.entries(habits).map(([id, { score, components, moments, whyNotShown }]) => [
      id,
      {
        score,
        ...components,
        whyNotShown,
        moments: moments.map(
          ({ fromS, toS, weight, good, what }) => `${good ? '+' : '-'} ${fromS.toFixed(2)}-${toS.toFixed(2)} ${weight.toFixed(5)} ${what}`,
        ),
      },
    ]),
  ),
});

const rounded = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value, (_, one: unknown) => (typeof one === 'number' ? Number(one.toFixed(6)) : one)));

function grades(): Record<string, unknown> {
  const found: Record<string, unknown> = {};
  const [plain, built] = [openExercise(smallField('weir', [640, 600], 400)), builtField('quarry')];
  for (const [i, walker] of WALKERS.entries()) {
    found[`${walker.id}, open field`] = gradeOf(plain, playWalker(plain, walker, i), walker.practice);
    found[`${walker.id}, wood and wires`] = gradeOf(built, playWalker(built, walker, i), walker.practice);
  }
  for (const name of ['two-ridges', 'farmyard']) {
    const path = `scenarios/${name}.json`;
    const exercise = openExercise(loadScenario(path, readFileSync(path, 'utf8')));
    // On the large ground an hour's walk takes seconds.
    for (const walker of name === 'farmyard' ? [steady, lowLying, weathercock, deaf] : [steady]) {
      found[`${walker.id}, ${name}`] = gradeOf(exercise, playWalker(exercise, walker, 7), walker.practice);
    }
  }
  for (let i = 0; i < DRAWN_HANDS; i++) {
    const recording = honestRun(i);
    const exercise = openExercise(recording.scenario);
    const run = replayRun(exercise, entriesOf(recording), recording.ticks, { thresholdDb: recording.listener.thresholdDb });
    found[`drawn hand ${i}`] = gradeOf(exercise, run);
  }
  return rounded(found) as Record<string, unknown>;
}

const actual = grades();
// A season compares runs of many weeks: a grade that comes out otherwise is a decision, written down by a person who has looked at why.
const golden = goldenAnswers(PATH, actual) ?? {};

test.each(Object.keys(golden))('%s: the same run has the grade that it had', (name) => {
  expect(actual[name]).toEqual(golden[name]);
});

test('every run has a grade on file', () => {
  expect(Object.keys(actual)).toEqual(Object.keys(golden));
});
