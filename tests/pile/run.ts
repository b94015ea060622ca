/**
 * Shares a pile of runs out to two workers by the very commands that the guide gives, and looks whether every answer came, in order:
 * `npm run pile` (`-- --runs N`, 1,000 unless said). Prints how long it took; a job runner that isn't on this machine is told and left out.
 */
import { parseArgs } from 'node:util';
import { writeRecording } from '../../src/core/run/record';
import { honestRun } from '../tampering/honestRuns';
import { guideCommands, isHere, pileFolder, ranBlock, sharerOf } from './guideCommands';

const { values } = parseArgs({ options: { runs: { type: 'string', default: '1000' } } });
const runs = Number(values.runs);

/** @returns whether every run was answered, in its place, and replays */
function tried(folder: string, block: string): boolean {
  const begun = performance.now();
  const { grades, checks, err } = ranBlock(folder, block);
  const tookS = (performance.now() - begun) / 1_000;
  const inOrder = grades.filter(({ name }, i) => name === `Hand ${i}`).length;
  const replayed = grades.filter(({ replayMatches }) => replayMatches).length;
  const sound = checks.filter(({ kind, faults }) => kind === 'run' && faults.length === 0).length;
  const counts = [grades.length, inOrder, replayed, checks.length, sound];
  const said = `${counts[0]} grades, ${inOrder} in order, ${replayed} replay; ${counts[3]} checks, ${sound} without fault`;
  console.log(`${sharerOf(block)}: ${said}; ${tookS.toFixed(0)} s for both${err === '' ? '' : `; said: ${err.slice(0, 400)}`}`);
  return counts.every((count) => count === runs);
}

const folder = pileFolder(
  'pile',
  Array.from({ length: runs }, (_, i) => writeRecording(honestRun(i))),
);
console.log(`${runs} runs written`);
for (const block of guideCommands()) {
  if (!isHere(sharerOf(block))) console.log(`${sharerOf(block)} is not on this machine: left out`);
  else if (!tried(folder, block)) process.exitCode = 1;
}
