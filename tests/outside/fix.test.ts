import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { REFERENCE_CASES } from '../../src/cli/fidelity/fixCases';
import { fixRows } from '../../src/cli/fidelity/fixRows';
import { estimateFix } from '../../src/core/fix/estimate';

for (const { claim, unit, value, reference, tolerance, mark, source } of fixRows) {
  test(`${claim} ${reference} ${unit} within ${tolerance} (${mark}: ${source})`, () => {
    expect(Math.abs(value() - reference)).toBeLessThanOrEqual(tolerance);
  });
}

type Recorded = { x: number; y: number; kappa_exact: number; ellipse95_lenth: Record<string, number> };
type Case = {
  id: string;
  stations: [number, number][];
  bearings_deg: number[];
  mle: Recorded & { resid_deg: number[]; ellipse95_F_smallsample: Record<string, number> };
  huber: Recorded & { weights: number[] };
  andrews: Recorded & { weights: number[] };
};
// Computed independently for this project; the file's own note says how.
const { cases } = JSON.parse(readFileSync('tests/outside/data/fix-cases.json', 'utf8')) as { cases: Case[] };

const asTable = (fix: Recorded) => ({
  x: fix.x,
  y: fix.y,
  kappa: fix.kappa_exact,
  semiMajorM: fix.ellipse95_lenth['semi_major_m'],
  semiMinorM: fix.ellipse95_lenth['semi_minor_m'],
  majorAxisBearingDeg: fix.ellipse95_lenth['major_axis_bearing_deg'],
});

test('the table of reference cases in the program is the reference file, number for number', () => {
  const expected = cases.map(({ id, stations, bearings_deg: bearingsDeg, mle, huber, andrews }) => {
    return { id, stations, bearingsDeg, fixes: { ml: asTable(mle), huber: asTable(huber), andrews: asTable(andrews) } };
  });
  expect(REFERENCE_CASES).toEqual(expected);
});

test.each(cases)('$id: the F-based area is the recorded one within 0.2 % and 0.2 degrees', ({ stations, bearings_deg, mle }) => {
  const fix = estimateFix({ stations, bearingsDeg: bearings_deg });
  const area = mle.ellipse95_F_smallsample;
  expect(Math.abs(fix.ellipse95!.semiMajorM / area['semi_major_m']! - 1)).toBeLessThan(0.002);
  expect(Math.abs(fix.ellipse95!.semiMinorM / area['semi_minor_m']! - 1)).toBeLessThan(0.002);
  expect(Math.abs(fix.ellipse95!.majorAxisBearingDeg - area['major_axis_bearing_deg']!)).toBeLessThan(0.2);
});

test.each(cases)(
  '$id: residuals are bearing taken minus bearing to the fix, as recorded within 0.001 degrees',
  ({ stations, bearings_deg, mle }) => {
    const fix = estimateFix({ stations, bearingsDeg: bearings_deg });
    for (const [i, residual] of fix.residualsDeg.entries()) expect(Math.abs(residual - mle.resid_deg[i]!)).toBeLessThan(0.001);
    expect(fix.residualsDeg).toHaveLength(stations.length);
  },
);

test.each(cases)('$id: Huber and Andrews weights are the recorded ones within 0.00001', ({ stations, bearings_deg, huber, andrews }) => {
  for (const [method, { weights }] of [
    ['huber', huber],
    ['andrews', andrews],
  ] as const) {
    const fix = estimateFix({ stations, bearingsDeg: bearings_deg, method });
    for (const [i, weight] of fix.weights.entries()) expect(Math.abs(weight - weights[i]!)).toBeLessThan(1e-5);
    expect(fix.weights).toHaveLength(weights.length);
  }
});
