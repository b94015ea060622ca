import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test, vi } from 'vitest';
import { UsageError } from '../../src/cli/inputs';
import { tableCommand } from '../../src/cli/table';
import { openExercise } from '../../src/core/run/exercise';
import { beginLive, tickOnce } from '../../src/core/run/live';
import { recordingOf, writeRecording } from '../../src/core/run/record';
import { smallField } from '../core/club/smallField';
import { cli, json } from './runCli';

const folder = mkdtempSync(join(tmpdir(), 'faintward-table-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const file = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

const exercise = openExercise(smallField('table', [640, 610], 60));
/** Two seconds in which somebody turns to a heading and gives up. */
function runOf(name: string, headingDeg: number): string {
  let live = beginLive(exercise);
  for (let tick = 0; tick < 40; tick++) live = tickOnce(exercise, live, tick === 10 ? [{ type: 'turn', toDeg: headingDeg }] : []);
  live = tickOnce(exercise, live, [{ type: 'giveUp' }]);
  return writeRecording(recordingOf(exercise, live, { name, by: 'person', begunAt: '2026-05-12T19:30:05+02:00' }));
}
const ROWAN = runOf('Rowan', 40);
const ASH = runOf('Ash <b>', 200);
const rowan = file('rowan.json', ROWAN);

/** The command without a process of its own: what it wrote where, and its exit code. */
function inProcess(files: readonly string[], ...flags: readonly string[]) {
  const written = { out: '', err: '' };
  const spies = (['out', 'err'] as const).map((to) =>
    vi.spyOn(process[`std${to}`], 'write').mockImplementation((text) => {
      written[to] += String(text);
      return true;
    }),
  );
  const options = Object.fromEntries(flags.map((flag) => flag.replace(/^--/, '').split('=')).map(([name, value]) => [name, value ?? true]));
  try {
    return { code: tableCommand(files, options, options['json'] === true), ...written };
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
}

type Document = {
  rows: { name: string; mark: string }[];
  faults: { file: string; path: string; found: string; mend: string }[];
  report: { exercises: { words: string; runs: { name: string }[] }[] };
};
const names = (doc: Document) => doc.rows.map(({ name }) => name).sort();

test('bad files are told each by a line and exit 1, the good runs still are in the table', () => {
  const [first] = ASH.trim().split('\n');
  const mixed = file('mixed.ndjson', `${first}\n{"format":"faintward-run",\n${ROWAN}`);
  const bad = file('bad.json', '{"format":"faintward-run","version":1}');
  const edited = file('edited.json', ROWAN.replace('"heard":[[', '"heard":[[1'));
  const ran = cli(['table', mixed, bad, join(folder, 'nowhere.json'), edited, '--json']);
  expect(ran.code).toBe(1);
  const doc = json<Document>(ran);
  expect(names(doc)).toEqual(['Ash <b>', 'Rowan', 'Rowan']);
  expect(doc.rows.map(({ mark }) => mark).sort()).toEqual(['checked', 'checked', 'does not replay']);
  expect(ran.err).toMatch(/mixed\.ndjson:2: whole file: .+\. Mend: .+\./);
  expect(ran.err).toMatch(/bad\.json: program: .+\. Mend: .+\./);
  expect(ran.err).toMatch(/nowhere\.json: whole file: no such file/);
  expect(doc.faults.length).toBe(ran.err.trim().split('\n').length);
}, 120_000);

test('a table goes on from the one that was saved, and the same file twice is one line', () => {
  const saved = cli(['table', rowan, '--json']);
  expect([saved.code, saved.err]).toEqual([0, '']);
  const before = file('before.json', saved.out);
  const on = cli(['table', before, rowan, '-', '--json'], ASH);
  expect(on.code).toBe(0);
  expect(names(json<Document>(on))).toEqual(['Ash <b>', 'Rowan']);
  const after = file('after.json', on.out);
  expect(inProcess([after, before], '--json').out).toBe(on.out);
}, 120_000);

test('each shape comes alone on standard output', () => {
  const two = file('two.ndjson', ROWAN + ASH);
  const starts: Readonly<Record<string, RegExp>> = {
    '--csv': /^exercise,exercise words,name,/,
    '--gpx': /^<\?xml version="1\.0"/,
    '--geojson': /^\{"type":"FeatureCollection"/,
    '--xapi': /^\[\{"id":"/,
    '--html': /^<!doctype html>/,
  };
  for (const [shape, start] of Object.entries(starts)) {
    const ran = inProcess([two], shape);
    expect([ran.code, ran.err]).toEqual([0, '']);
    expect(ran.out).toMatch(start);
    expect(ran.out).not.toContain('<b>Ash');
  }
  const page = inProcess([two], '--html').out;
  expect(page).toContain('Ash &lt;b&gt;');
  expect(page).not.toMatch(/<script|javascript:|src=|href=|url\(/i);
}, 120_000);

test('without names neither a name nor the name of a file is anywhere', () => {
  const bad = file('ash-was-here.json', '{');
  for (const shape of [['--json'], ['--csv'], ['--html'], []]) {
    const ran = inProcess([rowan, bad], '--anonymous', ...shape);
    expect(ran.code).toBe(1);
    expect(ran.out + ran.err).not.toMatch(/rowan|ash-was-here/i);
    expect(ran.err).toMatch(/^file 2: /);
    expect(ran.out).toContain('Tracker A');
  }
}, 120_000);

test('two shapes at once and an origin off the globe are wrong usage', () => {
  for (const flags of [
    ['--csv', '--gpx'],
    ['--csv', '--json'],
    ['--gpx', '--origin=91,0'],
    ['--gpx', '--origin=here'],
  ]) {
    expect(() => inProcess([rowan], ...flags)).toThrow(UsageError);
  }
  expect(cli(['table', rowan, '--csv', '--gpx']).code).toBe(2);
  expect(cli(['table', rowan, '--gpx', '--origin', '-45.5,170']).out).toContain('lat="-45.4');
}, 120_000);

test('walk writes what table checks: the grade and the seal are in the file', () => {
  const scenario = file('field.json', JSON.stringify(exercise.scenario));
  const out = join(folder, 'steady.json');
  expect(cli(['walk', scenario, '--as', 'steady', '--out', out, '--json']).code).toBe(0);
  const run = JSON.parse(readFileSync(out, 'utf8')) as { result: object; seal: string };
  expect(Object.keys(run.result)).toContain('technique');
  const doc = JSON.parse(inProcess([out], '--json').out) as Document;
  expect(doc.rows).toMatchObject([{ name: 'steady', mark: 'checked' }]);
}, 120_000);
