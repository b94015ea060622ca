import { expect, test } from 'vitest';
import { liesWithin, notebookFix } from '../../../src/core/fix/notebookFix';
import type { Mark } from '../../../src/core/run/state';
import { bearingDeg, stepAlong } from '../../../src/core/units/frames';

const tag = { eM: 400, nM: 300 };
const mark = (eM: number, nM: number, errorDeg: number, struckOut = false): Mark => ({
  atTick: 0,
  gainDb: 40,
  attenuatorDb: 0,
  at: { eM, nM },
  bearingDeg: bearingDeg({ eM, nM }, tag) + errorDeg,
  struckOut,
});

// 100 m along 70 degrees, 20 m across: worked by hand along the axes, across them, and at x/a = y/b = 0.7 (inside) and 0.72 (outside).
test('a place lies within an area by its own axes', () => {
  const area = { semiMajorM: 100, semiMinorM: 20, majorAxisBearingDeg: 70 };
  const within = (alongM: number, acrossM: number) => {
    const { eM, nM } = stepAlong(stepAlong(tag, 70, alongM), 160, acrossM);
    return liesWithin({ x: tag.eM, y: tag.nM }, area, { eM, nM });
  };
  for (const way of [1, -1]) {
    expect(within(99.9 * way, 0)).toBe(true);
    expect(within(100.1 * way, 0)).toBe(false);
    expect(within(0, 19.9 * way)).toBe(true);
    expect(within(0, 20.1 * way)).toBe(false);
    expect(within(70 * way, 14)).toBe(true);
    expect(within(72 * way, 14.4)).toBe(false);
    expect(within(30 * way, -30)).toBe(false);
  }
});

test('bearings struck out do not count, and without three that stand there are no weights', () => {
  const marks = [mark(300, 300, 0), mark(400, 200, 0), mark(3400, 2300, 6)];
  const all = notebookFix(marks);
  if (!all.ok) throw new Error(all.reason);
  expect(all.weights[2]).toBeLessThan(1);
  const two = notebookFix([...marks.slice(0, 2), mark(3400, 2300, 6, true), mark(0, 900, 90, true)]);
  if (!two.ok) throw new Error(two.reason);
  expect(two.weights).toEqual([1, 1]);
  expect(Math.hypot(two.x - tag.eM, two.y - tag.nM)).toBeLessThan(1e-6);
  expect(notebookFix([mark(300, 300, 0, true), mark(400, 200, 0)])).toMatchObject({ ok: false });
});

test('the area of a learner of twice the spread is twice as long; 5 degrees until measured', () => {
  const marks = [mark(0, 300, 1), mark(400, -200, -1)];
  const lengths = [undefined, 5, 10].map((sdDeg) => {
    const fix = notebookFix(marks, sdDeg);
    if (!fix.ok) throw new Error(fix.reason);
    return fix.learnerEllipse!.semiMajorM;
  });
  expect(lengths[0]).toBe(lengths[1]);
  expect(lengths[2]! / lengths[1]!).toBeCloseTo(2, 9);
});
