import { expect, test } from 'vitest';
import type { ElevationGrid } from '../../../src/core/elevation/elevationGrid';
import { readEsriGrid } from '../../../src/core/elevation/esriGrid';
import { onDrawnGround, onOwnGround, packedPiece } from '../../../src/core/elevation/ownGround';
import {
  clipHeights,
  type ElevationWindow,
  heightM,
  insideGrid,
  usualCellM,
  widthM,
  windowTrouble,
} from '../../../src/core/elevation/window';
import { openExercise } from '../../../src/core/run/exercise';
import { InputFaults } from '../../../src/core/scenario/faults';
import { loadScenario } from '../../../src/core/scenario/load';
import { packedHeights, unpackedHeights } from '../../../src/core/scenario/ownHeights';
import type { Scenario } from '../../../src/core/scenario/schema';
import { digestOf } from '../../../src/core/scenario/seal';
import { playWalker } from '../../../src/core/walkers/play';
import { steady } from '../../../src/core/walkers/steady';
import { generateWorld } from '../../../src/core/world/generate';
import { groundHeightM } from '../../../src/core/world/height';
import { walkable } from '../../../src/core/world/walking';
import { plainScenario } from '../world/fixtureScenario';
import { realTileText } from './realTile';

/** A round hill of 80 m on a plain that rises to the east, in cells of 30 by 20 m. */
const hillM = (eM: number, nM: number): number => 200 + 0.02 * eM + 80 * Math.exp(-((eM - 1_400) ** 2 + (nM - 1_500) ** 2) / 500 ** 2);
const hill = (holes: (i: number) => boolean = () => false): ElevationGrid => {
  const [columns, rows] = [100, 150];
  const heightsM = Float32Array.from({ length: columns * rows }, (_, i) =>
    holes(i) ? Number.NaN : hillM(((i % columns) + 0.5) * 30, (Math.floor(i / columns) + 0.5) * 20),
  );
  return { columns, rows, cellEastM: 30, cellNorthM: 20, heightsM, latitudeDeg: null };
};
const PIECE: ElevationWindow = { eastM: 400, northM: 500, sizeM: 2_000, cellM: 10 };
const bare = (): Scenario => {
  const plain = plainScenario();
  return {
    ...plain,
    ground: {
      ...plain.ground,
      water: { lakes: 0, streams: 0 },
      tracks: 0,
      farms: 0,
      hamlets: 0,
      fieldWalls: false,
      powerLines: [],
      buildings: [],
    },
  };
};
const clipped = (grid = hill(), piece = PIECE) => {
  const heights = clipHeights(grid, piece);
  if (typeof heights === 'string') throw new Error(heights);
  return heights;
};

test('a hill of known shape comes through clip, cells, packing and world within 0.3 m', () => {
  const scenario = onOwnGround(bare(), PIECE, packedPiece(clipped()), 'invented');
  const world = generateWorld(scenario);
  let worst = 0;
  for (let eM = 15; eM < 1_990; eM += 37)
    for (let nM = 15; nM < 1_990; nM += 41) worst = Math.max(worst, Math.abs(groundHeightM(world, { eM, nM }) - hillM(eM + 400, nM + 500)));
  expect(worst).toBeLessThan(0.3);
  expect(scenario.ground.relief).toMatchObject({ style: 'smooth', baseHeightM: 208 });
});

test('between coarse cells the land goes through every height without a crease: a bowl is as round as it was', () => {
  const bowlM = (eM: number, nM: number) => ((eM - 1_500) ** 2 + (nM - 1_500) ** 2) / 20_000;
  const coarse: ElevationGrid = {
    columns: 33,
    rows: 33,
    cellEastM: 93,
    cellNorthM: 93,
    latitudeDeg: null,
    heightsM: Float32Array.from({ length: 33 * 33 }, (_, i) => bowlM(((i % 33) + 0.5) * 93, (Math.floor(i / 33) + 0.5) * 93)),
  };
  const { heightsM, side } = clipped(coarse, { eastM: 500, northM: 500, sizeM: 2_000, cellM: 10 });
  // a parabola's second difference is the same everywhere; straight pieces would give 0 between cells and nine times as much at them
  for (let i = 1; i < side - 1; i++) {
    const at = 100 * side + i;
    expect(heightsM[at - 1]! - 2 * heightsM[at]! + heightsM[at + 1]!).toBeCloseTo(0.01, 3);
  }
});

test('a finer file is averaged over each cell, not picked from', () => {
  const rough: ElevationGrid = {
    columns: 1_200,
    rows: 1_200,
    cellEastM: 1,
    cellNorthM: 1,
    latitudeDeg: null,
    heightsM: Float32Array.from({ length: 1_440_000 }, (_, i) => 100 + (i % 2 ? 8 : -8)),
  };
  const { heightsM } = clipped(rough, { eastM: 100, northM: 100, sizeM: 1_000, cellM: 10 });
  expect(Math.max(...heightsM.map((h) => Math.abs(h - 100)))).toBeLessThan(0.01);
});

test('small holes are filled from their rims, a piece with many is refused', () => {
  const { filled, heightsM } = clipped(hill((i) => i % 100 > 40 && i % 100 < 45 && Math.floor(i / 100) > 60 && Math.floor(i / 100) < 66));
  expect(filled).toBeGreaterThan(50);
  expect(heightsM.some(Number.isNaN)).toBe(false);
  expect(
    clipHeights(
      hill((i) => i % 100 > 30 && i % 100 < 70),
      PIECE,
    ),
  ).toMatch(/\d+ % of the piece have no height: take another piece/);
});

test.each([
  [{ ...PIECE, sizeM: 500 }, /a side of 500 m/],
  [{ ...PIECE, cellM: 2 }, /cells of 2 m/],
  [{ ...PIECE, eastM: 1_500 }, /reaches past the file's 3000 by 3000 m/],
  [{ ...PIECE, sizeM: Number.NaN }, /a side of NaN m/],
])('a piece %j is refused: %s', (piece, said) => {
  expect(windowTrouble(hill(), piece)).toMatch(said);
});

test('a piece is held inside the grid, whatever is asked for, in sides that hold whole cells', () => {
  const grid = hill();
  for (const asked of [-4_000, 0, 777.7, 2_999, 90_000])
    for (const sizeM of [10, 1_234, 2_951, 90_000]) {
      const piece = insideGrid(grid, { eastM: asked, northM: asked / 2, sizeM, cellM: usualCellM(sizeM) });
      expect(windowTrouble(grid, piece)).toBe(null);
      expect(piece.sizeM % 100).toBe(0);
    }
  expect(insideGrid(grid, { eastM: 400.4, northM: 700, sizeM: 2_000, cellM: 10 })).toEqual({
    eastM: 400,
    northM: 700,
    sizeM: 2_000,
    cellM: 10,
  });
});

test('back on drawn ground the exercise has its own sizes, tags and start, and no heights of a file', () => {
  const there = onOwnGround(bare(), PIECE, packedPiece(clipped()), 'invented');
  const back = onDrawnGround(there);
  expect(back).toEqual({ ...there, ground: { ...bare().ground, sizeM: 2_000, cellM: 10, relief: there.ground.relief } });
  expect(generateWorld(back).groundM.values).toEqual(
    generateWorld({ ...bare(), ground: { ...bare().ground, relief: there.ground.relief, sizeM: 2_000, cellM: 10 } }).groundM.values,
  );
});

test('packed heights come back to half a step and take under a byte and a half a cell', () => {
  const { side, heightsM } = clipped();
  const packed = packedHeights(heightsM, side);
  const back = unpackedHeights(packed, side) as Float64Array;
  expect(Math.max(...back.map((h, i) => Math.abs(h - heightsM[i]!)))).toBeLessThanOrEqual(packed.stepM / 2 + 1e-9);
  expect(packed.packed.length).toBeLessThan(1.5 * side * side);
});

test('the highest relief that is packed, and one that falls over the whole range from cell to cell', () => {
  const side = 40;
  const heightsM = Float64Array.from({ length: side * side }, (_, i) => (i % 3 === 0 ? -480 : 8_900));
  const back = unpackedHeights(packedHeights(heightsM, side), side) as Float64Array;
  expect(Math.max(...back.map((h, i) => Math.abs(h - heightsM[i]!)))).toBeLessThan(0.11);
});

const saved = (scenario: unknown): string => JSON.stringify(scenario);
const refusal = (text: string): string => {
  try {
    loadScenario('own.json', text);
    return 'none';
  } catch (error) {
    if (!(error instanceof InputFaults)) throw error;
    return error.faults.map(({ path, found, mend }) => `${path}: ${found}: ${mend}`).join('; ');
  }
};

test('a scenario with own ground is read as it was written, and changed heights are told at their field', () => {
  const scenario = onOwnGround(bare(), PIECE, packedPiece(clipped()), 'invented');
  expect(digestOf(loadScenario('own.json', saved(scenario)))).toBe(digestOf(scenario));
  const own = scenario.ground.own!;
  const withPacked = (packed: string) => saved({ ...scenario, ground: { ...scenario.ground, own: { ...own, packed } } });
  expect(refusal(withPacked(own.packed.slice(0, -40)))).toMatch(
    /ground\.own\.packed: packed heights that are cut off or changed: bring the elevation file in again/,
  );
  expect(refusal(withPacked(packedHeights(new Float64Array(2_500), 50).packed))).toMatch(/another number of cells than 200 by 200/);
  expect(refusal(withPacked(packedHeights(new Float64Array(1_000_000), 1_000).packed))).toMatch(/another number of cells/);
  expect(refusal(withPacked('<b>'))).toMatch(/ground\.own\.packed/);
});

test('on real ground of three-second cells the steady walker walks to a tag and finds it', () => {
  const grid = readEsriGrid('tile.asc', realTileText(0, 1_040, 60, 100));
  const piece = { eastM: (widthM(grid) - 2_000) / 2, northM: (heightM(grid) - 2_000) / 2, sizeM: 2_000, cellM: 10 };
  const plain = bare();
  const scenario = onOwnGround(
    { ...plain, tags: [{ ...plain.tags[0]!, at: [1_500, 1_450] }], start: { at: [600, 500], facingDeg: 0 } },
    piece,
    packedPiece(clipped(grid, piece)),
    'Shuttle Radar Topography Mission, public domain',
  );
  const exercise = openExercise(loadScenario('real.json', saved(scenario)));
  const at = ([eM, nM]: readonly [number, number]) => ({ eM, nM });
  expect(walkable(exercise.world, at(scenario.start.at)) && walkable(exercise.world, at(scenario.tags[0]!.at))).toBe(true);
  expect(scenario.ground.relief.strengthM).toBeGreaterThan(60);
  expect(playWalker(exercise, steady, 1).state.ending).toBe('found');
});
