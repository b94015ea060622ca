/**
 * Everything that `npm test` tries on a sample, in full: `npm run test:full -- --state FILE`. Takes hours. With a state file a stopped run goes
 * on behind the steps that passed, and within a step that keeps a state of its own; a step that failed is told at the end and tried again.
 */
import { spawnSync } from 'node:child_process';
import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { left, stepsOf } from './steps';

const { values } = parseArgs({ options: { state: { type: 'string' } } });
const known = values.state && existsSync(values.state) ? readFileSync(values.state, 'utf8') : '';

const failed: string[] = [];
for (const { name, args } of left(stepsOf(values.state), known)) {
  const begun = performance.now();
  console.log(`\n${name}: npm ${args.join(' ')}`);
  const { status } = spawnSync('npm', args, { stdio: 'inherit' });
  const minutes = ((performance.now() - begun) / 60_000).toFixed(1);
  console.log(`${name}: ${status === 0 ? 'passed' : 'FAILED'} after ${minutes} min`);
  if (status !== 0) failed.push(name);
  else if (values.state) appendFileSync(values.state, `${JSON.stringify({ passed: name, minutes: Number(minutes) })}\n`);
}
if (failed.length > 0) {
  console.error(`failed: ${failed.join(', ')}`);
  process.exitCode = 1;
}
