import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { loadScenario } from '../../src/core/scenario/load';
import { cli, json } from './runCli';

const folder = mkdtempSync(join(tmpdir(), 'faintward-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const OUT = join(folder, 'drawn.json');

test('draw hands out a valid exercise of the lesson and level asked for, found in rehearsal', () => {
  const drawn = json<{ lesson: string; level: number; rehearsedS: number; rehearsals: number }>(
    cli(['draw', '--seed', '5', '--lesson', 'close-in', '--level', '1', '--out', OUT, '--json']),
  );
  const scenario = loadScenario(OUT, readFileSync(OUT, 'utf8'));
  expect([scenario.lesson, scenario.level, drawn.lesson, drawn.level]).toEqual(['close-in', 1, 'close-in', 1]);
  expect(drawn.rehearsals).toBeGreaterThanOrEqual(1);
  expect(drawn.rehearsedS).toBeGreaterThan(30);
}, 120_000);

test('rate gives the share found, the time and how far bearings mislead, one entry a scenario', () => {
  const rated = json<{ foundShare: number; medianTimeS: number; boundS: number; medianErrorDeg: number; walks: number }[]>(
    cli(['rate', OUT, '--walks', '1', '--json']),
  );
  expect(rated.length).toBe(1);
  const { foundShare, medianTimeS, boundS, medianErrorDeg, walks } = rated[0]!;
  expect([walks, foundShare]).toEqual([1, 1]);
  expect(medianTimeS).toBeGreaterThan(30);
  expect(boundS).toBeGreaterThan(300);
  expect(medianErrorDeg).toBeLessThan(45);
}, 120_000);

test('rate says where the bearings of an exercise between hillsides are misled, how far and by what', () => {
  const { misleading, misleadingShare, bearings } = json<
    { misleading: { at: [number, number]; bearings: number; offDeg: number; by: string }[]; misleadingShare: number; bearings: number }[]
  >(cli(['rate', 'scenarios/echo-scar.json', '--walks', '2', '--json']))[0]!;
  expect(misleading.length).toBeGreaterThan(0);
  expect(misleading[0]!.offDeg).toBeGreaterThan(15);
  expect(misleading.reduce((sum, place) => sum + place.bearings, 0)).toBeLessThanOrEqual(Math.ceil(misleadingShare * bearings) + 1);
  for (const { at, by } of misleading) {
    expect(Math.max(...at)).toBeLessThanOrEqual(1_300);
    expect(['direct', 'hillside', 'wall', 'wire', 'scatter']).toContain(by);
  }
}, 120_000);

test('draw and validity refuse wrong numbers with exit 2', () => {
  for (const args of [
    ['draw', '--seed', '5', '--lesson', 'close-in', '--level', '9', '--out', OUT],
    ['draw', '--seed', '5', '--lesson', 'flying', '--level', '1', '--out', OUT],
    ['validity', '--exercises', '0'],
    ['rate', OUT, '--walks', '1.5'],
  ])
    expect(cli(args).code, args.join(' ')).toBe(2);
}, 120_000);
