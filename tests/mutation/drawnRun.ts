/**
 * Breaks the core at places drawn by a seed, one at a time, and runs the tests of that folder: which share do they notice?
 * `npm run mutation:drawn -- radio antenna fix technique --count 100 --seed first --state FILE`. With a state file a stopped run goes on
 * where it was. Breaks that change no result (a cache, a bound never reached) can't be noticed; they stay in the count.
 */
import { spawnSync } from 'node:child_process';
import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { type DrawnBreak, drawBreaks, TRIED } from './drawnBreaks';

/** Tests with a break in place may take so many times what they take without; then the break counts as noticed. */
const PATIENCE = 5;

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { count: { type: 'string', default: '100' }, seed: { type: 'string', default: 'first' }, state: { type: 'string' } },
});

/** @returns the exit code of the tests, `null` where they had to be ended */
function tryBreak(folder: string, one: DrawnBreak | null, withinMs: number): number | null {
  const { status } = spawnSync('npx', ['tsx', 'tests/mutation/tryBreak.ts', JSON.stringify({ folder, one })], {
    timeout: withinMs,
    killSignal: 'SIGKILL',
  });
  return status;
}

const known = new Map<string, boolean>();
if (values.state && existsSync(values.state))
  for (const line of readFileSync(values.state, 'utf8').split('\n').filter(Boolean)) {
    const { key, noticed } = JSON.parse(line) as { readonly key: string; readonly noticed: boolean };
    known.set(key, noticed);
  }

let missed = false;
for (const folder of positionals.length > 0 ? positionals : Object.keys(TRIED)) {
  const begun = performance.now();
  if (tryBreak(folder, null, 600_000) !== 0) throw new Error(`the tests of ${folder} fail without any break`);
  const withinMs = Math.ceil(PATIENCE * (performance.now() - begun));
  const breaks = drawBreaks(folder, Number(values.count), values.seed);
  let noticed = 0;
  for (const [i, one] of breaks.entries()) {
    const key = `${one.file}:${one.from} ${one.was} -> ${one.put}`;
    const was = known.get(key) ?? tryBreak(folder, one, withinMs) !== 0;
    if (!known.has(key) && values.state) appendFileSync(values.state, `${JSON.stringify({ key, noticed: was })}\n`);
    if (was) noticed++;
    else console.log(`  not noticed: ${one.file}:${one.line}  ${one.was.slice(0, 60)}  ->  ${one.put.slice(0, 60)}`);
    if ((i + 1) % 20 === 0) process.stderr.write(`${folder}: ${i + 1} of ${breaks.length}\n`);
  }
  console.log(
    `${folder}: ${noticed} of ${breaks.length} drawn breaks noticed (${((100 * noticed) / breaks.length).toFixed(0)} %, goal 80)`,
  );
  missed ||= noticed < 0.8 * breaks.length;
}
process.exitCode = missed ? 1 : 0;
