import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { withoutNames } from '../../../src/core/club/anonymous';
import { clubReport } from '../../../src/core/club/clubReport';
import { csvOf } from '../../../src/core/club/csv';
import { mergeTables } from '../../../src/core/club/mergeTables';
import { STUDY } from '../../../src/core/club/reliability';
import { tableDocument } from '../../../src/core/club/tableDocument';
import { digestOf } from '../../../src/core/scenario/seal';
import { FELL, handmadeRow, reportOf, tableOf } from './handmadeTable';

test('the picture of the club names the weakest habit, what cost most and its lessons', () => {
  const advice = (next: string, weight: number) => [{ habit: 'quietGain' as const, next, weight }];
  const { picture } = reportOf(
    handmadeRow('a', { habits: { quietGain: 10 }, advice: advice('Lower the gain.', 9) }),
    handmadeRow('b', { habits: { quietGain: 30 }, advice: advice('Lower the gain.', 9) }),
    handmadeRow('c', { habits: { quietGain: 80 }, advice: advice('Put the attenuator in.', 12) }),
  );
  const quiet = picture.habits.find(({ habit }) => habit === 'quietGain')!;
  expect(quiet).toMatchObject({ shown: 3, of: 3, lowerQuartile: 20, median: 30, upperQuartile: 55, under50: 2 });
  expect(picture.teachNext).toContain('Teach next: Quiet gain (median 30, 2 of 3 under 50). Lower the gain.');
  expect(picture.teachNext).toContain('quiet-gain');
});

test('a habit that hardly anybody showed is not what to teach next', () => {
  const rows = [1, 2, 3, 4].map((i) => handmadeRow(`r${i}`, { habits: { clearView: i === 1 ? 0 : null } }));
  expect(reportOf(...rows).picture.teachNext).toContain('Quiet gain');
  expect(reportOf().picture.teachNext).toContain('No habit was shown');
});

test('runs that do not count are not in the picture', () => {
  const cheat = handmadeRow('cheat', { sound: false, mark: 'does not replay', technique: null, outcome: null, habits: { quietGain: 0 } });
  expect(reportOf(handmadeRow('a'), cheat).picture.habits[0]).toMatchObject({ of: 1, median: 70 });
});

const MOOR = { ...FELL, digest: digestOf('moor'), title: 'Long moor', seed: 'long-moor' };
const onMoor = { exercise: MOOR.digest };

test('the season counts dates by each device’s own clock, averages first attempts and keeps the fifth habit as last stated', () => {
  const practice = { daysPractised: 8, longestGapDays: 5, dueShare: 1, largestSkillShare: 0.5 };
  const table = mergeTables(
    { exercises: [FELL, MOOR], rows: [] },
    {
      exercises: [],
      rows: [
        // Half past eleven in the evening there, half past four the next day in Greenwich.
        handmadeRow('Rowan', { begunAt: '2026-05-12T23:30:00-05:00', technique: 60 }),
        handmadeRow('Rowan', { ...onMoor, begunAt: '2026-05-19T20:00:00-05:00', technique: 90, practice }),
        handmadeRow('Ash', { begunAt: null, technique: 70, outcome: { found: false, ending: 'gave-up' } }),
      ],
    },
  );
  const season = clubReport(table).season;
  expect(season.map(({ name, place, meanTechnique, found, days }) => [name, place, meanTechnique, found, days])).toEqual([
    ['Rowan', 1, 75, 2, ['2026-05-12', '2026-05-19']],
    ['Ash', 2, 70, 0, []],
  ]);
  expect(season.map(({ keepPractising, undatedRuns, preliminary }) => [keepPractising, undatedRuns, preliminary])).toEqual([
    [100, 0, true],
    [null, 1, true],
  ]);
});

test.each([
  [60, Math.floor(60 + STUDY.detectableChange), 'within chance'],
  [60, Math.ceil(60 + STUDY.detectableChange), 'improved'],
  [80, Math.floor(80 - STUDY.detectableChange), 'lower'],
])('from %i to %i technique is said to be: %s', (first, last, change) => {
  const rows = [
    handmadeRow('Rowan', { begunAt: '2026-05-12T19:00:00Z', technique: first }),
    handmadeRow('Rowan', { ...onMoor, begunAt: '2026-05-19T19:00:00Z', technique: last }),
  ];
  expect(clubReport({ exercises: [FELL, MOOR], rows }).season[0]!.change).toBe(change);
});

test('reliability comes from the study for few people, and its numbers are those of the guide’s page', () => {
  const { reliability } = reportOf(handmadeRow('Rowan'));
  expect(reliability).toMatchObject({ from: 'the validity study', ...STUDY });
  expect(reliability.note).toContain('not who walked it');
  const row = /\| technique \| [\d.]+ \| ([\d.]+) \| (\d+) \| ([\d.]+) \|/.exec(readFileSync('assets/guide/validity.md', 'utf8'))!;
  expect([STUDY.ofOneRun, STUDY.runsFor08, STUDY.detectableChange]).toEqual(row.slice(1, 4).map(Number));
});

test('reliability comes from the table where five people walked the same three exercises', () => {
  const exercises = ['one', 'two', 'three'].map((name) => ({ ...FELL, digest: digestOf(name), title: name, seed: name }));
  const rows = [40, 55, 70, 85, 95].flatMap((skill, i) =>
    exercises.map(({ digest }, j) => handmadeRow(`p${i}`, { exercise: digest, technique: skill + [0, 2, -2][(i + j) % 3]! })),
  );
  const { reliability } = clubReport({ exercises, rows });
  expect(reliability.from).toBe('this table');
  expect(reliability.ofOneRun).toBeGreaterThan(0.95);
  expect(reliability.runsFor08).toBe(1);
});

test('an edited copy of an exercise is told, with the words of both, and ranked by itself', () => {
  const copy = { ...FELL, digest: digestOf('copy'), findWithinM: 60 };
  const report = clubReport({ exercises: [FELL, copy], rows: [handmadeRow('Rowan'), handmadeRow('Ash', { exercise: copy.digest })] });
  expect(report.notes.length).toBe(1);
  for (const { words } of report.exercises) expect(report.notes[0]).toContain(words);
  expect(report.exercises.map(({ runs }) => runs[0]!.technique)).toEqual([1, 1]);
});

test('without names the places stay, no name and no digest of a run is left, and walkers keep theirs', () => {
  const walk = handmadeRow('Copied');
  const table = tableOf(
    handmadeRow('Rowan', { technique: 90 }),
    walk,
    { ...walk, name: 'Copier' },
    handmadeRow('', { technique: 40 }),
    handmadeRow('steady', { by: 'walker' }),
  );
  const hidden = withoutNames(table);
  const places = (of: typeof table) => clubReport(of).exercises[0]!.runs.map(({ technique, outcome }) => [technique, outcome]);
  expect(places(hidden)).toEqual(places(table));
  const text = JSON.stringify(tableDocument(hidden, clubReport(hidden), [], true)) + csvOf(clubReport(hidden));
  for (const { name, run, by } of table.rows)
    if (by === 'person') expect([name && text.includes(name), text.includes(run)]).toEqual([name && false, false]);
  expect(text).toContain('steady');
  expect(new Set(hidden.rows.map(({ name }) => name)).size).toBe(5);
});
