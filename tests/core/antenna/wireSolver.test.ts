import { describe, expect, test } from 'vitest';
import { patternOf, powerOf } from '../../../src/core/antenna/pattern';
import { meshOf } from '../../../src/core/antenna/segments';
import { meanGain } from '../../../src/core/antenna/sphereMean';
import { type Point3, rodAcross, type WireChain } from '../../../src/core/antenna/wireChain';
import { impedanceMatrix, solveWires } from '../../../src/core/antenna/wireSolver';
import { randomFor } from '../../../src/core/random/draw';

const DRIVE = { amplitude: 1, phaseDeg: 0 };
const YAGI: readonly WireChain[] = [rodAcross(-0.36, 0.99, 0.006), rodAcross(0, 0.94, 0.006, DRIVE), rodAcross(0.3, 0.91, 0.006)];

/** A few skew rods drawn from a seed, the first driven; they lie on separate planes so that none touch. */
function skewRods(seed: number): WireChain[] {
  const random = randomFor(`skew-${seed}`, 'walk');
  return [0, 1, 2].map((i) => {
    const [a, b] = [2 * Math.PI * random(), Math.acos(2 * random() - 1)];
    const half = 0.2 + 0.3 * random();
    const along: Point3 = [half * Math.sin(b) * Math.cos(a), half * Math.sin(b) * Math.sin(a), half * Math.cos(b)];
    const middle: Point3 = [1.2 * i, 0.3 * random(), 0.3 * random()];
    const corners: readonly Point3[] = [
      [middle[0] - along[0], middle[1] - along[1], middle[2] - along[2]],
      [middle[0] + along[0], middle[1] + along[1], middle[2] + along[2]],
    ];
    const rod = { corners, closed: false, radiusM: 0.003 };
    return i === 0 ? { ...rod, drive: DRIVE } : rod;
  });
}

test('the impedance matrix is symmetric to 1e-6: reciprocity', () => {
  const mesh = meshOf(YAGI, 2, 8, true);
  const matrix = impedanceMatrix(mesh, Math.PI);
  const n = mesh.modes.length;
  const most = matrix.reduce((size, value) => Math.max(size, Math.abs(value)), 0);
  for (let i = 0; i < n; i++)
    for (let j = 0; j < i; j++)
      for (const part of [0, 1])
        expect(Math.abs(matrix[2 * (i * n + j) + part]! - matrix[2 * (j * n + i) + part]!) / most).toBeLessThan(1e-6);
});

test.each([0, 1, 2, 3, 4, 5])('seed %i: skew rods radiate what they take in, mean gain 1.00 within 0.01', (seed) => {
  expect(Math.abs(meanGain(patternOf(skewRods(seed), 150)) - 1)).toBeLessThan(0.01);
});

test('the skew formula and the parallel one give the same impedance within 0.2 %: a bend of a thousandth of a degree', () => {
  const bent = (zM: number): readonly WireChain[] => [
    {
      corners: [
        [0, -0.47, 0],
        [0, 0, zM],
        [0, 0.47, 0],
      ],
      closed: false,
      radiusM: 0.003,
      drive: { ...DRIVE, atCorner: 1 },
    },
  ];
  const straight = solveWires(bent(0), 150).impedanceOhm;
  const skew = solveWires(bent(1e-5), 150).impedanceOhm;
  expect(Math.hypot(straight[0] - skew[0], straight[1] - skew[1]) / Math.hypot(...straight)).toBeLessThan(0.002);
});

test('turning a set of wires in space turns its pattern', () => {
  const upright = YAGI.map((chain) => ({ ...chain, corners: chain.corners.map(([x, y]): Point3 => [x, 0, y]) }));
  const [level, standing] = [patternOf(YAGI, 150), patternOf(upright, 150)];
  const [one, other] = [new Float64Array(4), new Float64Array(4)];
  for (const [x, y, z] of [
    [0.6, 0.8, 0],
    [0.36, 0.48, 0.8],
    [-0.8, 0, 0.6],
  ] as const) {
    level.fieldInto(x, y, z, one);
    standing.fieldInto(x, -z, y, other);
    expect(powerOf(other)).toBeCloseTo(powerOf(one), 9);
  }
});

test('doubling all sizes at half the frequency leaves gain and impedance as they are', () => {
  const doubled = YAGI.map((chain) => ({
    ...chain,
    radiusM: 2 * chain.radiusM,
    corners: chain.corners.map(([x, y, z]): Point3 => [2 * x, 2 * y, 2 * z]),
  }));
  const [one, other] = [patternOf(YAGI, 150), patternOf(doubled, 75)];
  expect(other.forwardDbi).toBeCloseTo(one.forwardDbi, 9);
  expect(other.impedanceOhm[0]).toBeCloseTo(one.impedanceOhm[0], 6);
});

test('two equal rods fed a quarter turn apart throw forward; with the phases exchanged they throw as much backward', () => {
  const out = new Float64Array(4);
  const aheadAndBehind = (phaseDeg: number): readonly [number, number] => {
    const pattern = patternOf([rodAcross(0, 0.96, 0.002, DRIVE), rodAcross(0.5, 0.96, 0.002, { amplitude: 1, phaseDeg })], 150);
    pattern.fieldInto(-1, 0, 0, out);
    return [pattern.forwardDbi, 10 * Math.log10(powerOf(out))];
  };
  const [ahead, behind] = aheadAndBehind(-90);
  expect(ahead - behind).toBeGreaterThan(3);
  expect(aheadAndBehind(90)[1]).toBeCloseTo(ahead, 6);
  expect(aheadAndBehind(90)[0]).toBeCloseTo(behind, 6);
});

describe('what cannot be solved is refused', () => {
  test('no drive', () => expect(() => solveWires([rodAcross(0, 1, 0.01)], 150)).toThrow('no wire is driven'));
  test('no frequency', () => expect(() => solveWires(YAGI, 0)).toThrow('need a frequency'));
  test('no length', () => expect(() => solveWires([rodAcross(0, 0, 0.01, DRIVE)], 150)).toThrow('no length'));
  test('a gap at a free end', () =>
    expect(() => solveWires([{ ...YAGI[1]!, drive: { ...DRIVE, atCorner: 0 } }], 150)).toThrow('no gap can be fed'));
});
