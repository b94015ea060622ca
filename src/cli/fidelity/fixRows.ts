import { CHI_SQUARE_95 } from '../../core/fix/ellipse';
import { estimateFix } from '../../core/fix/estimate';
import type { FixInput, FixMethod, FoundFix } from '../../core/fix/fix';
import { toRad, turnDeg } from '../../core/units/angles';
import { REFERENCE_CASES, type ReferenceCase, type ReferenceFix } from './fixCases';
import { areaCoveragePercent } from './fixCoverage';
import type { CheckRow } from './row';

/** The fix must exist: a refusal is a failed check, not a missing number. */
function found(input: FixInput): FoundFix {
  const fix = estimateFix(input);
  if (!fix.ok) throw new Error(fix.reason);
  return fix;
}

/** Three stations and bearings from the literature; the result was computed independently for this project. */
const WORKED: FixInput = {
  stations: [
    [554045, 2813867],
    [553355, 2813873],
    [553207, 2814120],
  ],
  bearingsDeg: [300, 20, 90],
};

const WORKED_SOURCE = 'published inputs, result computed independently for this project';

const workedRow = (what: string, unit: string, reference: number, tolerance: number, value: (fix: FoundFix) => number): CheckRow => ({
  claim: `worked fix of three bearings: ${what}`,
  unit,
  value: () => value(found(WORKED)),
  reference,
  tolerance,
  mark: 'D',
  source: WORKED_SOURCE,
});

const workedRows: readonly CheckRow[] = [
  workedRow('east', 'm', 553455.14, 0.05, (fix) => fix.x),
  workedRow('north', 'm', 2814130.72, 0.05, (fix) => fix.y),
  workedRow('kappa', '', 231.7, 0.002 * 231.7, (fix) => fix.kappa ?? NaN),
  workedRow('chi-square area, half the long axis', 'm', 49.69, 0.002 * 49.69, (fix) => fix.ellipse95Chi2?.semiMajorM ?? NaN),
  workedRow('chi-square area, half the short axis', 'm', 34.94, 0.002 * 34.94, (fix) => fix.ellipse95Chi2?.semiMinorM ?? NaN),
  workedRow('bearing of the long axis', 'degrees', 68.2, 0.2, (fix) => fix.ellipse95Chi2?.majorAxisBearingDeg ?? NaN),
];

const METHODS: readonly FixMethod[] = ['ml', 'huber', 'andrews'];

/** The largest of a difference over the three methods of a case. */
const worst = ({ stations, bearingsDeg, fixes }: ReferenceCase, off: (fix: FoundFix, reference: ReferenceFix) => number): number =>
  Math.max(...METHODS.map((method) => off(found({ stations, bearingsDeg, method }), fixes[method])));

function caseRows(reference: ReferenceCase): readonly CheckRow[] {
  const row = (what: string, unit: string, tolerance: number, off: (fix: FoundFix, reference: ReferenceFix) => number): CheckRow => ({
    claim: `${reference.id}, plain, Huber and Andrews: ${what}`,
    unit,
    value: () => worst(reference, off),
    reference: 0,
    tolerance,
    mark: 'D',
    source: 'direct maximisation and reweighting computed independently for this project',
  });
  const percentOff = (value: number | undefined, wanted: number): number => Math.abs(100 * ((value ?? NaN) / wanted - 1));
  return [
    row('position off by at most', 'm', 0.05, (fix, { x, y }) => Math.hypot(fix.x - x, fix.y - y)),
    row('kappa off by at most', '%', 0.1, (fix, { kappa }) => percentOff(fix.kappa ?? undefined, kappa)),
    row('axes of the chi-square area off by at most', '%', 0.2, ({ ellipse95Chi2: area }, { semiMajorM, semiMinorM }) =>
      Math.max(percentOff(area?.semiMajorM, semiMajorM), percentOff(area?.semiMinorM, semiMinorM)),
    ),
    row('long axis turned by at most', 'degrees', 0.2, ({ ellipse95Chi2: area }, { majorAxisBearingDeg }) =>
      Math.abs(turnDeg(2 * (area?.majorAxisBearingDeg ?? NaN), 2 * majorAxisBearingDeg) / 2),
    ),
  ];
}

/** Two stations at one distance from the tag, their bearings crossing at the angle: the long axis over spread times distance. */
function longAxisOverSpread(crossingDeg: number): number {
  const distanceM = 1_000;
  const learnerSdDeg = 4;
  const half = toRad(crossingDeg / 2);
  const eM = distanceM * Math.sin(half);
  const nM = -distanceM * Math.cos(half);
  const bearingsDeg = [crossingDeg / 2, 360 - crossingDeg / 2];
  const fix = found({
    stations: [
      [-eM, nM],
      [eM, nM],
    ],
    bearingsDeg,
    learnerSdDeg,
  });
  return (fix.learnerEllipse?.semiMajorM ?? NaN) / (Math.sqrt(CHI_SQUARE_95) * toRad(learnerSdDeg) * distanceM);
}

const crossingRow = (crossingDeg: number, reference: number): CheckRow => ({
  claim: `two bearings that cross at ${crossingDeg} degrees: long axis over spread times distance`,
  unit: '',
  // At exactly 20 degrees rounding could fall on the refused side.
  value: () => longAxisOverSpread(crossingDeg === 20 ? 20 + 1e-9 : crossingDeg),
  reference,
  tolerance: 0.01,
  mark: 'D',
  source: '1 / sqrt(1 - cos crossing angle), derived for this project',
});

const coverageRow = (bearings: number): CheckRow => ({
  claim: `F-based 95 % area of ${bearings} bearings with a spread of 3 to 6 degrees holds the tag`,
  unit: '%',
  value: () => areaCoveragePercent(bearings),
  reference: 95,
  tolerance: 2,
  mark: 'D',
  source: 'law: an area holds the tag as often as it says',
});

/** Checks of the fix against its worked example, six reference cases, the law of the crossing angle and the coverage of its area. */
export const fixRows: readonly CheckRow[] = [
  ...workedRows,
  ...REFERENCE_CASES.flatMap(caseRows),
  ...(
    [
      [90, 1],
      [60, 1.41],
      [45, 1.85],
      [30, 2.73],
      [20, 4.07],
    ] as const
  ).map(([deg, ratio]) => crossingRow(deg, ratio)),
  ...[3, 4, 5, 6, 7, 8].map(coverageRow),
];
