import { expect, test } from 'vitest';
import { estimateFix } from '../../../src/core/fix/estimate';
import { guessFromBearings } from '../../../src/core/fix/guess';
import { robustLogLikelihood } from '../../../src/core/fix/supportedPlace';
import { bearingDeg } from '../../../src/core/units/frames';

const reading = (eM: number, nM: number, takenDeg: number) => ({ at: { eM, nM }, bearingDeg: takenDeg });

test.each([
  // Stations 1200 m apart west to east: three times that beyond the outermost on every side, 64 cells across.
  ['wide', [reading(100, 50, 45), reading(1300, 250, 315), reading(700, 450, 10)], 100 - 3600, 50 - 3600, (7 * 1200) / 64],
  ['tall', [reading(50, 100, 45), reading(250, 1300, 100), reading(450, 700, 80)], 50 - 3600, 100 - 3600, (7 * 1200) / 64],
  // Stations 60 m apart: 500 m beyond.
  ['close', [reading(0, 0, 45), reading(60, 0, 315), reading(30, 10, 0)], -500, -500, 1060 / 64],
])('%s: the guess grid reaches as far beyond the stations as told', (_, lines, westM, southM, cellM) => {
  const grid = guessFromBearings(lines, 5);
  expect(grid.southWest).toEqual({ eM: westM, nM: southM });
  expect(grid.cellM).toBeCloseTo(cellM, 12);
  const valueAt = robustLogLikelihood(lines, 5);
  for (const [column, row] of [
    [0, 0],
    [63, 0],
    [0, 63],
    [17, 41],
  ] as const)
    expect(grid.logLikelihood[row * 64 + column]).toBe(valueAt({ eM: westM + (column + 0.5) * cellM, nM: southM + (row + 0.5) * cellM }));
});

test('parallel readings have no best place on the guess grid', () => {
  expect(guessFromBearings([reading(0, 0, 20), reading(300, 0, 20)], 5).best).toBeNull();
});

test('of three bearings, too, a robust fix gives the stray one less say than the plain fix', () => {
  const tag = { eM: 400, nM: 300 };
  // Two close stations hold the place, so the far one keeps its whole error: 1.7 spreads, which Huber's 1.5 cuts down.
  const stations = [
    [300, 300],
    [400, 200],
    [3400, 2300],
  ] as const;
  const bearingsDeg = stations.map(([eM, nM], i) => bearingDeg({ eM, nM }, tag) + [0, 0, 6][i]!);
  const plain = estimateFix({ stations, bearingsDeg });
  const huber = estimateFix({ stations, bearingsDeg, method: 'huber' });
  if (!plain.ok || !huber.ok) throw new Error('a fix was refused');
  expect(plain.weights).toEqual([1, 1, 1]);
  expect(huber.weights.slice(0, 2)).toEqual([1, 1]);
  expect(huber.weights[2]).toBeLessThan(1);
});
