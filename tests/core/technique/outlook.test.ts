import { expect, test } from 'vitest';
import { makeOutlook, outlookOf } from '../../../src/core/technique/outlook';
import { FLAT, handmadeWorld, MIDDLE, out } from './handmadeRun';

const line = Array.from({ length: 5 }, (_, i) => ({ eM: 40 * i + 1, nM: 0 }));

test('the percentile of a place is taken among the places reachable from the other, ties at mid-rank', () => {
  const outlook = makeOutlook(
    ({ eM }) => eM,
    () => line,
  );
  expect(outlook.percentileAmong({ eM: 81, nM: 0 }, MIDDLE)).toBe(50);
  expect(outlook.percentileAmong({ eM: 500, nM: 0 }, MIDDLE)).toBe(100);
  expect(outlook.contrastAround(MIDDLE)).toBe(80);
});

test('one place stands for each square of 40 m', () => {
  const dense = Array.from({ length: 100 }, (_, i) => ({ eM: 2 * i, nM: 0 }));
  const outlook = makeOutlook(
    () => 0.5,
    () => dense,
  );
  expect(outlook.reachable(MIDDLE, 120)).toHaveLength(5);
});

test('two minutes of walk are compared for the percentile, and each place is looked at once', () => {
  const asked: number[] = [];
  let looks = 0;
  const outlook = makeOutlook(
    ({ eM }) => {
      looks++;
      return eM;
    },
    (_, seconds) => {
      asked.push(seconds);
      return line;
    },
  );
  for (let i = 0; i < 3; i++) outlook.percentileAmong(line[2]!, MIDDLE);
  expect(asked).toEqual([120]);
  expect(looks).toBe(5);
});

test('on a hill the crest is above the 75th percentile and the foot below the median; a plain has no contrast', () => {
  const ridge = outlookOf(handmadeWorld({ heightM: (eM) => 100 + 60 * Math.exp(-(((eM - 4_000) / 150) ** 2)) }));
  expect(ridge.percentileAmong(MIDDLE, MIDDLE)).toBeGreaterThan(75);
  expect(ridge.percentileAmong(out(90, 300), out(90, 300))).toBeLessThan(50);
  expect(outlookOf(FLAT).contrastAround(MIDDLE)).toBeLessThan(0.05);
});
