/**
 * Measures the library: the steady walker does every exercise of scenarios/ 20 times, and what that says is held against the levels.
 * `npm run library -- --state FILE [--walks N] [--report]`. With a state file a stopped run goes on where it was; a walk counts for the
 * exercise as it was when it was walked, so one whose ground, tags, kit or limits were edited is walked anew. The report goes into the guide.
 */
import { fork } from 'node:child_process';
import { appendFileSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { loadScenario } from '../../src/core/scenario/load';
import { LESSONS, type Scenario } from '../../src/core/scenario/schema';
import { digestOf } from '../../src/core/scenario/seal';
import { bundled } from '../bench/bundled';
import { measured, type Walked } from './order';
import { libraryPage } from './report';
import type { Asked } from './walkPart';

const { values } = parseArgs({
  options: { state: { type: 'string' }, walks: { type: 'string', default: '20' }, report: { type: 'boolean', default: false } },
});
/** Two leave room for the person at the machine. */
const PROCESSES = 2;

/** An exercise without what no walk depends on: a mended text or level asks for no new walks. */
function walkedPart({ title: _t, brief: _b, author: _a, lesson: _l, level: _v, cautions: _c, parS: _p, ...rest }: Scenario): unknown {
  return rest;
}

const exercises = readdirSync('scenarios')
  .filter((name) => name.endsWith('.json') && !name.endsWith('schema.json'))
  .map((name) => {
    const file = `scenarios/${name}`;
    const scenario = loadScenario(file, readFileSync(file, 'utf8'));
    return { file, scenario, digest: digestOf(walkedPart(scenario)) };
  });
const keyOf = ({ digest, seed }: Asked | Walked): string => `${digest}/${seed}`;
const asked: readonly Asked[] = exercises.flatMap(({ file, digest }) =>
  Array.from({ length: Number(values.walks) }, (_, i) => ({ file, digest, seed: i + 1 })),
);

const done = new Map<string, Walked>();
for (const line of values.state && existsSync(values.state) ? readFileSync(values.state, 'utf8').split('\n') : []) {
  // A line cut short by a stop is walked again.
  if (!line.endsWith('}')) continue;
  const walk = JSON.parse(line) as Walked;
  done.set(keyOf(walk), walk);
}
const left = asked.filter((one) => !done.has(keyOf(one)));
process.stderr.write(`${asked.length - left.length} of ${asked.length} walks were done before\n`);

function keep(walk: Walked): void {
  done.set(keyOf(walk), walk);
  if (values.state) appendFileSync(values.state, `${JSON.stringify(walk)}\n`);
  const over = asked.filter((one) => done.has(keyOf(one))).length;
  if (walk.seed === Number(values.walks)) process.stderr.write(`${over} of ${asked.length}: ${walk.file}\n`);
}

/** One process, given walks one after the other. */
function feed(script: string): Promise<void> {
  const part = fork(script, { env: { ...process.env, FAINTWARD_LIBRARY_PART: '1' } });
  return new Promise((resolve, reject) => {
    let current: Asked | undefined;
    part.on('message', (message: Walked | 'ready') => {
      if (message !== 'ready') keep(message);
      current = left.shift();
      part.send(current ?? 'stop');
    });
    part.on('exit', (code) => (current || code !== 0 ? reject(new Error(`a process ended with ${code}`)) : resolve()));
  });
}

await bundled('tests/library/walkPart.ts');
await Promise.all(Array.from({ length: Math.min(PROCESSES, left.length) }, () => feed('node_modules/.cache/bench/walkPart.mjs')));

const all = exercises.map(({ file, scenario: { title, lesson, level, limits, parS } }) =>
  measured(
    { title, lesson, level, limitS: limits.timeS, parS },
    asked.filter((one) => one.file === file).map((one) => done.get(keyOf(one))!),
  ),
);
const page = libraryPage(all, LESSONS);
if (values.report) writeFileSync('assets/guide/library.md', page);
process.stdout.write(page);
