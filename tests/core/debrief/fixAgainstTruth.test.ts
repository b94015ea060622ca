import { expect, test } from 'vitest';
import { bearingRows } from '../../../src/core/debrief/bearings';
import { fixesAgainstTruth } from '../../../src/core/debrief/fixAgainstTruth';
import { timelineOf } from '../../../src/core/debrief/timeline';
import { estimateFix } from '../../../src/core/fix/estimate';
import type { Fix } from '../../../src/core/fix/fix';
import { liesWithin, notebookFix } from '../../../src/core/fix/notebookFix';
import type { Evidence } from '../../../src/core/technique/habit';
import { bearingDeg, distanceM, type MapPoint } from '../../../src/core/units/frames';
import { handmadeRun, MIDDLE, out } from '../technique/handmadeRun';
import { plainScenario } from '../world/fixtureScenario';

const tags = [{ ...plainScenario().tags[0]!, at: [MIDDLE.eM, MIDDLE.nM] as [number, number] }];
const scenario = plainScenario({ tags });

/** Stations in turn, each bearing off the tag by so many degrees. */
const taken = (stations: readonly (readonly [MapPoint, number])[]): Evidence =>
  handmadeRun(
    (hands) => {
      for (const [at, offDeg] of stations) {
        hands.walkTo(at, 50);
        hands.mark(bearingDeg(at, MIDDLE) + offDeg);
        hands.stand(1);
      }
    },
    { scenario, startAt: stations[0]![0] },
  );

const rowsOf = (evidence: Evidence) => bearingRows(evidence, timelineOf(evidence));
const fixesOf = (evidence: Evidence) => fixesAgainstTruth(evidence.run.state.notebook, rowsOf(evidence));

test('each bearing is told with its true error, signed clockwise, its distance and whether the tag is in sight', () => {
  const rows = rowsOf(
    taken([
      [out(200, 600), 7],
      [out(300, 500), -12],
    ]),
  );
  expect(rows.map(({ errorDeg }) => Math.round(errorDeg * 10) / 10)).toEqual([7, -12]);
  expect(rows.map((row) => Math.round(row.distanceM))).toEqual([600, 500]);
  expect(rows.every(({ inSight }) => inSight)).toBe(true);
});

test('after one bearing there is no fix and the reason is said, after a second crossing at 90 degrees there is one on the tag', () => {
  const [first, second] = fixesOf(
    taken([
      [out(180, 600), 0],
      [out(270, 600), 0],
    ]),
  );
  expect(first!.fix).toMatchObject({ ok: false, reason: expect.stringMatching(/at least two/) });
  expect(second!.offM).toBeLessThan(0.5);
  expect(second!.within).toBe(true);
  expect(second!.fix.crossingAngleDeg).toBeCloseTo(90, 3);
});

test('bearings that cross under 20 degrees give no fix, from 20 to 30 degrees a warning', () => {
  const last = (apartDeg: number) =>
    fixesOf(
      taken([
        [out(180, 600), 0],
        [out(180 + apartDeg, 600), 0],
      ]),
    ).at(-1)!.fix;
  expect(last(15)).toMatchObject({ ok: false, reason: expect.stringMatching(/under 20/) });
  expect(last(25).ok).toBe(true);
  expect(last(25).warnings.join(' ')).toMatch(/cross at only 25/);
  expect(last(40).warnings.join(' ')).not.toMatch(/cross at only/);
});

test('a tag far outside the area is told as outside, with its distance', () => {
  const fix = fixesOf(
    taken([
      [out(180, 600), 20],
      [out(270, 600), 20],
      [out(225, 500), 20],
    ]),
  ).at(-1)!;
  expect(fix.within).toBe(false);
  expect(fix.offM).toBeGreaterThan(100);
});

test('struck-out bearings are in no fix', () => {
  const evidence = taken([
    [out(180, 600), 0],
    [out(225, 600), 90],
    [out(270, 600), 0],
  ]);
  const notebook = evidence.run.state.notebook.map((mark, i) => ({ ...mark, struckOut: i === 1 }));
  const struck = { ...evidence, run: { ...evidence.run, state: { ...evidence.run.state, notebook } } };
  expect(fixesOf(struck).map(({ bearings }) => bearings)).toEqual([[1], [1, 3]]);
  expect(fixesOf(struck).at(-1)!.offM).toBeLessThan(0.5);
});

test('a stray bearing among four drags the fix less than four fifths as far as it would without weights', () => {
  const { notebook } = taken([
    [out(180, 600), 0],
    [out(270, 600), 0],
    [out(225, 600), 1],
    [out(200, 700), 50],
  ]).run.state;
  const offM = (fix: Fix) => distanceM(MIDDLE, { eM: fix.x!, nM: fix.y! });
  const plain = estimateFix({ stations: notebook.map(({ at }) => [at.eM, at.nM]), bearingsDeg: notebook.map((mark) => mark.bearingDeg) });
  expect(offM(notebookFix(notebook))).toBeLessThan(0.8 * offM(plain));
});

test('a place lies in an area exactly while it is inside its axes', () => {
  const area = { semiMajorM: 100, semiMinorM: 20, majorAxisBearingDeg: 30 };
  const centre = { x: MIDDLE.eM, y: MIDDLE.nM };
  const inside = (alongDeg: number, m: number) => liesWithin(centre, area, out(alongDeg, m));
  expect([inside(30, 99.9), inside(210, 99.9), inside(120, 19.9)]).toEqual([true, true, true]);
  expect([inside(30, 100.1), inside(120, 20.1), inside(75, 50)]).toEqual([false, false, false]);
  expect(distanceM(MIDDLE, out(30, 99.9))).toBeCloseTo(99.9, 6);
});
