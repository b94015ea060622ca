import fc from 'fast-check';
import { expect, test } from 'vitest';
import { estimateFix } from '../../../src/core/fix/estimate';
import type { Fix, FixInput, FixMethod, FoundFix } from '../../../src/core/fix/fix';
import { randomFor } from '../../../src/core/random/draw';
import { turnDeg } from '../../../src/core/units/angles';
import { bearingDeg } from '../../../src/core/units/frames';

const METHODS: readonly FixMethod[] = ['ml', 'huber', 'andrews'];
type Station = readonly [number, number];

/** Stations anywhere within 1.5 km, bearings to a tag near the middle with errors of up to `errorDeg`. */
function drawn(seed: number, errorDeg: number): { stations: Station[]; bearingsDeg: number[] } {
  const random = randomFor('fix exercises', 'test', seed);
  const tag = { eM: 400 * random() - 200, nM: 400 * random() - 200 };
  const stations = Array.from({ length: 3 + Math.floor(6 * random()) }, (): Station => [3000 * random() - 1500, 3000 * random() - 1500]);
  const bearingsDeg = stations.map(([eM, nM]) => bearingDeg({ eM, nM }, tag) + errorDeg * (2 * random() - 1));
  return { stations, bearingsDeg };
}

function found(fix: Fix): FoundFix {
  if (!fix.ok) throw new Error(fix.reason);
  return fix;
}

/** Sum of cosines, written down afresh. */
const cosines = ({ stations, bearingsDeg }: FixInput, eM: number, nM: number): number =>
  stations.reduce((sum, [e, n], i) => sum + Math.cos(Math.atan2(eM - e, nM - n) - (bearingsDeg[i]! * Math.PI) / 180), 0);

test('no point of a 50 m grid over 10 x 10 km is likelier than the plain fix, in 30 drawn exercises', () => {
  let fixes = 0;
  for (let seed = 0; seed < 30; seed++) {
    const input = drawn(seed, seed % 2 === 0 ? 6 : 25);
    const fix = estimateFix(input);
    if (!fix.ok) continue;
    fixes += 1;
    const best = cosines(input, fix.x, fix.y);
    let grid = -Infinity;
    for (let e = -5000; e <= 5000; e += 50) for (let n = -5000; n <= 5000; n += 50) grid = Math.max(grid, cosines(input, e, n));
    expect(grid, `exercise ${seed}`).toBeLessThanOrEqual(best + 1e-12);
    for (const [de, dn] of [
      [0.05, 0],
      [-0.05, 0],
      [0, 0.05],
      [0, -0.05],
    ] as const)
      expect(cosines(input, fix.x + de, fix.y + dn)).toBeLessThan(best);
  }
  expect(fixes).toBeGreaterThan(22);
});

test.each(METHODS)('%s: moved stations move the fix by the same, to 0.1 mm over millions of metres; areas stay', (method) => {
  const far = { min: -5e6, max: 5e6, noNaN: true };
  fc.assert(
    fc.property(fc.nat(500), fc.double(far), fc.double(far), (seed, eM, nM) => {
      const { stations, bearingsDeg } = drawn(seed, 6);
      const here = estimateFix({ stations, bearingsDeg, method });
      const there = estimateFix({ stations: stations.map(([e, n]) => [e + eM, n + nM] as const), bearingsDeg, method });
      expect(there.ok).toBe(here.ok);
      if (!here.ok || !there.ok) return;
      expect(Math.hypot(there.x - here.x - eM, there.y - here.y - nM)).toBeLessThan(1e-4);
      expect(Math.abs(there.ellipse95!.semiMajorM / here.ellipse95!.semiMajorM - 1)).toBeLessThan(1e-5);
    }),
    { seed: 11, numRuns: 40 },
  );
});

test.each(METHODS)('%s: stations and bearings turned about the origin turn the fix and its areas by the same', (method) => {
  fc.assert(
    fc.property(fc.nat(500), fc.double({ min: 0, max: 360, noNaN: true }), (seed, byDeg) => {
      const { stations, bearingsDeg } = drawn(seed, 6);
      const [s, c] = [Math.sin((byDeg * Math.PI) / 180), Math.cos((byDeg * Math.PI) / 180)];
      const turn = ([e, n]: Station): Station => [e * c + n * s, n * c - e * s];
      const here = estimateFix({ stations, bearingsDeg, method });
      const turned = estimateFix({ stations: stations.map(turn), bearingsDeg: bearingsDeg.map((deg) => deg + byDeg), method });
      expect(turned.ok).toBe(here.ok);
      if (!here.ok || !turned.ok) return;
      const [x, y] = turn([here.x, here.y]);
      expect(Math.hypot(turned.x - x, turned.y - y)).toBeLessThan(1e-4);
      expect(Math.abs(turned.kappa! / here.kappa! - 1)).toBeLessThan(1e-6);
      for (const area of ['ellipse95', 'ellipse95Chi2', 'learnerEllipse'] as const) {
        const [a, b] = [here[area]!, turned[area]!];
        expect(Math.abs(b.semiMajorM / a.semiMajorM - 1)).toBeLessThan(1e-5);
        expect(Math.abs(b.semiMinorM / a.semiMinorM - 1)).toBeLessThan(1e-5);
        const leftDeg = Math.abs(turnDeg(2 * (a.majorAxisBearingDeg + byDeg), 2 * b.majorAxisBearingDeg)) / 2;
        expect(leftDeg * (1 - a.semiMinorM / a.semiMajorM)).toBeLessThan(1e-3); // a circle has no long axis
      }
    }),
    { seed: 12, numRuns: 40 },
  );
});

test.each(METHODS)('%s: the order of the stations changes nothing but the order of residuals and weights', (method) => {
  fc.assert(
    fc.property(fc.nat(500), fc.nat(7), (seed, by) => {
      const { stations, bearingsDeg } = drawn(seed, 10);
      const rotate = <T>(list: readonly T[]): T[] => [...list.slice(by % list.length), ...list.slice(0, by % list.length)].reverse();
      const here = estimateFix({ stations, bearingsDeg, method });
      const there = estimateFix({ stations: rotate(stations), bearingsDeg: rotate(bearingsDeg), method });
      expect(there.ok).toBe(here.ok);
      if (!here.ok || !there.ok) return;
      expect(Math.hypot(there.x - here.x, there.y - here.y)).toBeLessThan(1e-4);
      rotate(here.residualsDeg).forEach((residual, i) => {
        expect(Math.abs(residual - there.residualsDeg[i]!)).toBeLessThan(1e-5);
      });
    }),
    { seed: 13, numRuns: 40 },
  );
});

test('whatever the stations and bearings, the answer holds no NaN and no Infinity', () => {
  const coordinate = fc.oneof(fc.integer({ min: -3, max: 3 }), fc.double({ min: -1e8, max: 1e8, noNaN: true }));
  const bearing = fc.oneof(fc.constantFrom(0, 45, 90, 180, 270, 360), fc.double({ min: -360, max: 360, noNaN: true }));
  const station = fc.tuple(coordinate, coordinate, bearing);
  fc.assert(
    fc.property(fc.array(station, { maxLength: 7 }), fc.constantFrom(...METHODS), (rows, method) => {
      const fix = estimateFix({ stations: rows.map(([e, n]) => [e, n] as const), bearingsDeg: rows.map(([, , deg]) => deg), method });
      const walk = (value: unknown): void => {
        if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
        else if (value !== null && typeof value === 'object') for (const inner of Object.values(value)) walk(inner);
        else expect(value).not.toBe(undefined);
      };
      walk(fix);
    }),
    { seed: 14, numRuns: 1000 },
  );
});

const refusals: readonly [string, Station[], number[], RegExp][] = [
  ['no bearing', [], [], /at least two bearings/],
  ['one bearing', [[0, 0]], [10], /at least two bearings/],
  [
    'three bearings from one place',
    [
      [5, 5],
      [5, 5],
      [5, 5],
    ],
    [10, 50, 90],
    /from one place/,
  ],
  [
    'two parallel bearings',
    [
      [0, 0],
      [500, 0],
    ],
    [20, 20],
    /parallel/,
  ],
  [
    'two opposite bearings',
    [
      [0, 0],
      [500, 0],
    ],
    [20, 200],
    /parallel/,
  ],
  [
    'two diverging bearings',
    [
      [0, 0],
      [500, 0],
    ],
    [330, 30],
    /diverge/,
  ],
  [
    'two bearings that meet behind one station',
    [
      [0, 0],
      [500, 0],
    ],
    [0, 100],
    /diverge/,
  ],
  [
    'two bearings that cross at 19.9 degrees',
    [
      [0, 0],
      [1000, 0],
    ],
    [90 - 9.95, 270 + 9.95 + 0],
    /cross at 19\.9 degrees, under 20/,
  ],
  [
    'two bearings, one through the other station',
    [
      [0, 0],
      [500, 0],
    ],
    [90, 30],
    /on top of station 2/,
  ],
  [
    'three bearings, all parallel',
    [
      [0, 0],
      [500, 0],
      [1000, 0],
    ],
    [0, 0, 0],
    /infinitely far away/,
  ],
  [
    'three bearings that spread apart',
    [
      [0, 0],
      [300, 0],
      [600, 0],
    ],
    [350, 0, 10],
    /infinitely far away/,
  ],
  [
    'three bearings that meet on the third station',
    [
      [0, 0],
      [1000, 0],
      [500, 500],
    ],
    [45, 315, 120],
    /on top of station 3/,
  ],
];

test.each(refusals)('%s: refused, and the reason says so, by every method', (_, stations, bearingsDeg, reason) => {
  for (const method of METHODS) {
    const fix = estimateFix({ stations, bearingsDeg, method });
    expect(fix).toMatchObject({ ok: false, x: null, y: null, kappa: null, ellipse95: null, ellipse95Chi2: null });
    expect(fix.ok ? '' : fix.reason).toMatch(reason);
  }
});

/** Two stations 1 km from the tag at the origin, the lines crossing at `crossingDeg`. */
function pairCrossingAt(crossingDeg: number): FixInput {
  const half = (crossingDeg * Math.PI) / 360;
  const [e, n] = [1000 * Math.sin(half), -1000 * Math.cos(half)];
  return {
    stations: [
      [-e, n],
      [e, n],
    ],
    bearingsDeg: [crossingDeg / 2, 360 - crossingDeg / 2],
  };
}

test('crossing angles: 19.9 and 160.1 degrees are refused, 20.1 and 29.9 warned of, 30.1 is not', () => {
  const thin = /cross at only/;
  expect(estimateFix(pairCrossingAt(19.9)).ok).toBe(false);
  expect(estimateFix(pairCrossingAt(160.1)).ok).toBe(false);
  expect(found(estimateFix(pairCrossingAt(20.1))).warnings.join()).toMatch(thin);
  expect(found(estimateFix(pairCrossingAt(29.9))).warnings.join()).toMatch(thin);
  expect(found(estimateFix(pairCrossingAt(30.1))).warnings.join()).not.toMatch(thin);
});

test.each(METHODS)('%s: two bearings meet exactly, with the learner area and null for what needs a spread', (method) => {
  const fix = found(
    estimateFix({
      stations: [
        [0, 0],
        [100, 0],
      ],
      bearingsDeg: [45, 315],
      method,
    }),
  );
  expect(Math.hypot(fix.x - 50, fix.y - 50)).toBeLessThan(1e-9);
  expect([fix.kappa, fix.ellipse95, fix.ellipse95Chi2]).toEqual([null, null, null]);
  // Two lines at right angles, 70.71 m off, 5 degrees: a circle of radius 70.71 x 0.08727 x 2.4477 m.
  expect(fix.learnerEllipse!.semiMajorM).toBeCloseTo(15.104, 3);
  expect(fix.learnerEllipse!.semiMinorM).toBeCloseTo(15.104, 3);
});

test('a learner twice as steady has an area half as long', () => {
  const input = pairCrossingAt(60);
  const steady = found(estimateFix({ ...input, learnerSdDeg: 2.5 })).learnerEllipse!;
  const usual = found(estimateFix(input)).learnerEllipse!;
  expect(usual.semiMajorM / steady.semiMajorM).toBeCloseTo(2, 10);
});

test.each(METHODS)('%s: four bearings that meet in one point give the point, null kappa and a warning', (method) => {
  const stations: Station[] = [
    [0, 0],
    [1000, 0],
    [1000, 1000],
    [0, 1000],
  ];
  const fix = found(estimateFix({ stations, bearingsDeg: [45, 315, 225, 135], method }));
  expect(Math.hypot(fix.x - 500, fix.y - 500)).toBeLessThan(1e-6);
  expect(fix.kappa).toBe(null);
  expect(fix.warnings.join()).toMatch(/meet in one point/);
});

test('six bearings, one of them a back signal: Andrews sets it aside and lands within 60 m where the plain fix is dragged off or refused', () => {
  const stations: Station[] = [
    [0, -1000],
    [700, -700],
    [1000, 0],
    [700, 700],
    [-300, 900],
    [-900, 200],
  ];
  const errorsDeg = [2, -3, 1, 180, -2, 3];
  const bearingsDeg = stations.map(([eM, nM], i) => bearingDeg({ eM, nM }, { eM: 0, nM: 0 }) + errorsDeg[i]!);
  const robust = found(estimateFix({ stations, bearingsDeg, method: 'andrews' }));
  expect(Math.hypot(robust.x, robust.y)).toBeLessThan(60);
  expect(robust.weights[3]).toBe(0);
  expect(robust.warnings.join()).toMatch(/Bearing 4 points away/);
  expect(robust.warnings.join()).toMatch(/Bearing 4 disagrees/);
});

test('impossible input is thrown back: unequal lists, numbers that are not finite, a spread of 0', () => {
  expect(() => estimateFix({ stations: [[0, 0]], bearingsDeg: [1, 2] })).toThrow(/1 stations but 2 bearings/);
  expect(() => estimateFix({ stations: [[0, Number.NaN]], bearingsDeg: [1] })).toThrow(/station 1/);
  expect(() => estimateFix({ stations: [[0, 0]], bearingsDeg: [1], learnerSdDeg: 0 })).toThrow(RangeError);
});
