import { expect, test } from 'vitest';
import type { ElevationGrid } from '../../../src/core/elevation/elevationGrid';
import { pieceFacts, previewOf } from '../../../src/core/elevation/preview';
import { gridTrouble, remarksOn } from '../../../src/core/elevation/remarks';
import { medianSlopeDeg } from '../../../src/core/elevation/steepness';

/** Cells of 20 m east by 40 m north; `heightAt` is told the middle of each, metres. */
const gridOf = (columns: number, rows: number, heightAt: (eM: number, nM: number) => number, cellM = 20): ElevationGrid => ({
  columns,
  rows,
  cellEastM: cellM,
  cellNorthM: 2 * cellM,
  latitudeDeg: null,
  heightsM: Float32Array.from({ length: columns * rows }, (_, i) =>
    heightAt(((i % columns) + 0.5) * cellM, (Math.floor(i / columns) + 0.5) * 2 * cellM),
  ),
});
const slope = gridOf(300, 100, (eM, nM) => 100 + 0.1 * eM + 0.05 * nM);

test('the picture has square cells, the south-west corner first, and keeps holes', () => {
  const preview = previewOf({ ...slope, heightsM: slope.heightsM.map((h, i) => (i < 300 * 50 ? Number.NaN : h)) }, 150);
  expect([preview.columns, preview.rows, preview.cellM]).toEqual([150, 100, 40]);
  expect(preview.values.filter(Number.isNaN)).toHaveLength(150 * 50);
  const whole = previewOf(slope, 150);
  expect(Math.abs(whole.values[0]! - 103)).toBeLessThan(2);
  expect(Math.abs(whole.values.at(-1)! - (100 + 600 + 200))).toBeLessThan(5);
});

test('what a piece holds is told to the coarseness of the picture', () => {
  const { lowM, highM, holesShare } = pieceFacts(previewOf(slope, 150), { eastM: 2_000, northM: 1_000, sizeM: 1_000 });
  expect(Math.abs(lowM - (100 + 200 + 50))).toBeLessThan(8);
  expect(Math.abs(highM - (100 + 300 + 100))).toBeLessThan(8);
  expect(holesShare).toBe(0);
  const half = { ...slope, heightsM: slope.heightsM.map((h, i) => (i % 300 < 150 ? Number.NaN : h)) };
  expect(pieceFacts(previewOf(half, 150), { eastM: 2_500, northM: 0, sizeM: 1_000 }).holesShare).toBeCloseTo(0.5, 1);
});

test('a plane has the slope of its two gradients', () => {
  expect(medianSlopeDeg(slope)).toBeCloseTo((Math.atan(Math.hypot(0.1, 0.05)) * 180) / Math.PI, 1);
  expect(medianSlopeDeg({ ...slope, heightsM: slope.heightsM.map(() => Number.NaN) })).toBe(0);
});

test('land that is steep everywhere is taken for feet or wrong cells, honest land is not', () => {
  expect(remarksOn(slope).join()).not.toMatch(/feet/);
  expect(remarksOn({ ...slope, heightsM: slope.heightsM.map((h) => 9 * h) }).join()).toMatch(/steeper than 45°.* in feet, say so here/);
});

test('coarse cells, degrees and a table of land are each remarked on', () => {
  expect(remarksOn(gridOf(60, 40, (eM) => eM / 10, 45)).join()).toMatch(/Cells of 90 m: the land between them is drawn smooth/);
  expect(remarksOn({ ...slope, latitudeDeg: -33.44 })[0]).toMatch(
    /in degrees or on the grid of web maps: its cells were measured out at 33\.4° south/,
  );
  expect(remarksOn(gridOf(60, 40, () => 7)).join()).toMatch(/as flat as a table/);
  expect(remarksOn(gridOf(300, 150, (eM) => eM / 10, 10))).toEqual([]);
});

test('a grid that is too small, too coarse or has nothing but holes is refused with its mend', () => {
  expect(gridTrouble(slope)).toBe(null);
  expect(gridTrouble(gridOf(40, 40, (eM) => eM))).toMatchObject({
    found: '800 by 1600 m of ground, and an exercise takes 1000 m at least',
    mend: expect.stringContaining('look whether the cell size is in metres'),
  });
  expect(gridTrouble(gridOf(40, 40, (eM) => eM / 90, 463))).toMatchObject({ found: 'cells of 926 m, too coarse to walk on' });
  expect(gridTrouble(gridOf(100, 100, () => Number.NaN))).toMatchObject({ found: 'no cell has a height' });
});
