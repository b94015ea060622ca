import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { afterAll, expect, test } from 'vitest';
import type { writeRecording } from '../../src/core/run/record';
import { bearingDeg } from '../../src/core/units/frames';
import { plainScenario } from '../core/world/fixtureScenario';
import { cli, json } from './runCli';

const folder = mkdtempSync(join(tmpdir(), 'faintward-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const file = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

const FELL = 'scenarios/open-fell.json';
/** A small exercise with the tag 260 m from the start. */
const near = plainScenario({
  ground: {
    sizeM: 1_000,
    relief: { style: 'smooth', strengthM: 1, roughness: 0, baseHeightM: 100 },
    cover: { wood: 0, scrub: 0, wet: 0, rock: 0 },
    water: { lakes: 0, streams: 0 },
    farms: 0,
    powerLines: [],
    buildings: [],
    fieldWalls: false,
  },
  tags: [{ ...plainScenario().tags[0]!, at: [520, 500], whip: { leanDeg: 0, towardDeg: 0 } }],
  start: { at: [380, 280], facingDeg: 0 },
});
const NEAR = file('near.json', JSON.stringify(near));

test('wrong usage exits 2 with one line on standard error and nothing on standard output', () => {
  for (const args of [
    [],
    ['fly'],
    ['sweep', FELL],
    ['sweep', FELL, '--at', '1,2', '--gain', '500'],
    ['walk', FELL, '--as', 'nobody', '--out', 'x'],
    ['arrivals', FELL, '--at', 'north'],
    ['sweep', FELL, '--at', '1,2', '--gain', '5', '--colour', 'red'],
  ]) {
    const ran = cli(args);
    expect([ran.code, ran.out], args.join(' ')).toEqual([2, '']);
    expect(ran.err.trim().split('\n').length).toBe(1);
  }
}, 60_000);

test('wrong input exits 1 with a line for each fault: file, path, what was found, the mend', () => {
  const twice = file('twice.json', JSON.stringify({ ...near, level: 7, colour: 'red' }));
  for (const command of [['check'], ['walk', '--as', 'steady', '--out', join(folder, 'no.json')]]) {
    const ran = cli([command[0]!, twice, ...command.slice(1)]);
    expect(ran.code).toBe(1);
    const lines = ran.err.trim().split('\n');
    expect(lines.length).toBe(2);
    for (const line of lines) expect(line).toMatch(/^.*twice\.json: (level|colour): .+\. Mend: .+\.$/);
  }
});

test.each([
  ['an unknown key', () => file('a.json', JSON.stringify({ ...near, ground: { ...near.ground, depth: 3 } })), 'ground.depth: unknown key'],
  ['NaN', () => file('b.json', JSON.stringify(near).replace('"level":2', '"level":NaN')), 'NaN'],
  ['20 MB', () => file('c.json', JSON.stringify({ pad: 'x'.repeat(20_000_000) })), 'more than'],
  ['broken JSON', () => file('d.json', '{"format":'), 'not JSON'],
  ['a missing tag', () => file('e.json', JSON.stringify({ ...near, tags: [] })), 'tags'],
  [
    'a tag outside the map',
    () => file('f.json', JSON.stringify({ ...near, tags: [{ ...near.tags[0]!, at: [500, 1_500] }] })),
    'outside the map',
  ],
  ['no such file', () => join(folder, 'nowhere.json'), 'no such file'],
])('check: %s is one clear line and exit 1', (_what, name, says) => {
  const ran = cli(['check', name(), '--json']);
  expect(ran.code).toBe(1);
  expect(ran.err.trim().split('\n').length).toBe(1);
  expect(ran.err).toContain(says);
  const faults = json<{ path: string; mend: string }[]>(ran);
  expect(faults.length).toBe(1);
  expect(faults[0]!.mend.length).toBeGreaterThan(5);
});

test('check finds no fault in the shared scenarios', () => {
  const ran = cli(['check', 'scenarios/farmyard.json', FELL, '--json']);
  expect([ran.code, ran.out.trim(), ran.err]).toEqual([0, '[]', '']);
});

test('arrivals: strongest first, the direct wave comes from the tag', () => {
  const waves = json<{ azimuthDeg: number; powerDbm: number; kind: string; lossDb: { freeSpace: number } }[]>(
    cli(['arrivals', NEAR, '--at', '380,280', '--json']),
  );
  expect(waves.map(({ powerDbm }) => powerDbm)).toEqual(waves.map(({ powerDbm }) => powerDbm).sort((a, b) => b - a));
  const direct = waves.find(({ kind }) => kind === 'direct')!;
  expect(Math.abs(direct.azimuthDeg - bearingDeg({ eM: 380, nM: 280 }, { eM: 520, nM: 500 }))).toBeLessThan(0.1);
  // ITU-R P.525: 20 log d + 20 log f - 27.55 for metres and megahertz, 260.8 m at 150.1 MHz.
  expect(Math.abs(direct.lossDb.freeSpace - (20 * Math.log10(260.8) + 20 * Math.log10(150.1) - 27.55))).toBeLessThan(0.1);
});

type Swept = {
  leastGainDb: number;
  trueBearingDeg: number;
  headings: { deg: number; powerDbm: number; loudnessDb: number; pDetect: number; levelDb: number }[];
};

test('sweep: loudest near the true bearing with little gain, front as loud as back with much', () => {
  const at = (gain: number) =>
    json<Swept>(cli(['sweep', NEAR, '--at', '380,280', '--gain', String(gain), '--roll', '90', '--step', '10', '--json']));
  const quiet = at(20);
  expect(quiet.headings.length).toBe(36);
  const loudest = quiet.headings.reduce((a, b) => (b.powerDbm > a.powerDbm ? b : a));
  expect(Math.abs(loudest.deg - quiet.trueBearingDeg)).toBeLessThan(16);
  const front = Math.round(quiet.trueBearingDeg / 10) % 36;
  const difference = ({ headings }: Swept) => headings[front]!.levelDb - headings[(front + 18) % 36]!.levelDb;
  expect(difference(at(90))).toBeLessThan(1);
  expect(difference(quiet)).toBeGreaterThan(8);
});

test('walk: the steady walker finds the tag, grade replays and grades the file, table-free JSON only on standard output', () => {
  const out = join(folder, 'steady.json');
  const walked = json<{ found: boolean }>(cli(['walk', NEAR, '--as', 'steady', '--seed', '3', '--out', out, '--json']));
  expect(walked.found).toBe(true);
  type Graded = {
    found: boolean;
    replayMatches: boolean;
    technique: number | null;
    habits: Record<string, { score: number | null; moments: unknown[] }>;
  };
  const grade = json<Graded>(cli(['grade', out, '--json']));
  expect([grade.found, grade.replayMatches]).toEqual([true, true]);
  expect(Object.keys(grade.habits)).toEqual(['quietGain', 'setThenSweep', 'walkAndListen', 'clearView', 'keepPractising']);
  expect(grade.habits['quietGain']!.score!).toBeGreaterThan(60);
  const both = json<Graded[]>(cli(['grade', out, out, '--json']));
  expect(both.map(({ technique }) => technique)).toEqual([grade.technique, grade.technique]);
  const lines = cli(['grade', '-', '--json'], readFileSync(out, 'utf8').repeat(2)).out.trim().split('\n');
  expect(lines.map((line) => JSON.parse(line) as Graded)).toEqual([grade, grade]);
}, 120_000);

test('grade: a run with a louder pulse written in does not replay', () => {
  const run = JSON.parse(readFileSync(join(folder, 'steady.json'), 'utf8')) as Parameters<typeof writeRecording>[0];
  run.heard[5]![2] += 3;
  expect(json<{ replayMatches: boolean }>(cli(['grade', file('edited.json', JSON.stringify(run)), '--json'])).replayMatches).toBe(false);
}, 60_000);

/** Peak of the samples within a few milliseconds after a time. */
function peakAfter(samples: Int16Array, atS: number): number {
  let peak = 0;
  for (let i = Math.round(atS * 48_000); i < (atS + 0.02) * 48_000; i++) peak = Math.max(peak, Math.abs(samples[i] ?? 0));
  return peak / 32_767;
}

test('listen: the WAV has its pulses at the told times and levels', () => {
  const out = join(folder, 'turn.wav');
  const told = json<{ pulses: { atS: number; levelDb: number; headingDeg: number }[] }>(
    cli([
      'listen',
      NEAR,
      '--at',
      '380,280',
      '--turn',
      '-148..212',
      '--seconds',
      '12',
      '--gain',
      '25',
      '--roll',
      '90',
      '--out',
      out,
      '--json',
    ]),
  );
  const bytes = readFileSync(out);
  const samples = new Int16Array(bytes.buffer, bytes.byteOffset + 44, (bytes.length - 44) / 2);
  expect(samples.length).toBe(12 * 48_000);
  expect(told.pulses.length).toBe(12);
  for (const { atS, levelDb } of told.pulses) {
    if (levelDb < -45) continue; // near the noise the peak is noise
    expect(Math.abs(20 * Math.log10(peakAfter(samples, atS) / 0.5) - levelDb), `${atS} s`).toBeLessThan(1);
    expect(peakAfter(samples, atS - 0.021) / peakAfter(samples, atS)).toBeLessThan(0.5);
  }
  const headings = told.pulses.map(({ headingDeg }) => headingDeg);
  expect(headings.every((deg) => deg >= 0 && deg < 360)).toBe(true);
});

test('listen: a pose list moves and sets as it says', () => {
  const row = { e: 380, n: 280, headingDeg: 32, rollDeg: 90, attenuatorDb: 0 };
  const poses = file(
    'poses.json',
    JSON.stringify([
      { ...row, atS: 0, gainDb: 20 },
      { ...row, atS: 3, gainDb: 30 },
      { ...row, atS: 6, gainDb: 30 },
    ]),
  );
  const { pulses } = json<{ pulses: { atS: number; levelDb: number }[] }>(
    cli(['listen', NEAR, '--poses', poses, '--out', join(folder, 'p.wav'), '--json']),
  );
  const level = (fromS: number, toS: number) => pulses.find(({ atS }) => atS >= fromS && atS < toS)!.levelDb;
  expect(level(3, 5) - level(0, 3)).toBeGreaterThan(9.5);
  const wrong = cli(['listen', NEAR, '--poses', file('q.json', '[{"atS":0}]'), '--out', join(folder, 'q.wav')]);
  expect(wrong.code).toBe(1);
  expect(wrong.err).toContain('q.json: 0.');
});

test('survey: a picture, and its numbers row by row from the south-west', () => {
  const out = join(folder, 'open.png');
  const survey = json<{ columns: number; rows: number; values: (number | null)[] }>(
    cli(['survey', NEAR, '--what', 'openness', '--out', out, '--json']),
  );
  expect(survey.values.length).toBe(survey.columns * survey.rows);
  for (const value of survey.values) expect(value! >= 0 && value! <= 1).toBe(true);
  const png = PNG.sync.read(readFileSync(out));
  expect([png.width % survey.columns, png.height % survey.rows]).toEqual([0, 0]);
}, 60_000);
