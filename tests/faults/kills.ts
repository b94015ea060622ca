/**
 * Kills the browser's processes at random moments of runs and looks what the next start finds: `npm run kills -- --times 1000`.
 * Tells how far it is; ends with 1 where more than two seconds of a run, or a finished run, were lost.
 */
import { parseArgs } from 'node:util';
import { killRounds, lostS } from './killRounds';

const MOST_LOST_S = 2;
const { values } = parseArgs({ options: { times: { type: 'string', default: '1000' }, seed: { type: 'string', default: 'kills' } } });

let count = 0;
const rounds = await killRounds(Number(values.times), values.seed, (round) => {
  count++;
  if (lostS(round) > MOST_LOST_S) console.log(`kill ${count}: ${JSON.stringify(round)}`);
  if (count % 25 === 0) process.stderr.write(`${count} of ${values.times} kills\n`);
});
const lost = rounds.map(lostS);
const ends = rounds.filter(({ killedWhile }) => killedWhile === 'ending');
console.log(
  `${rounds.length} kills, ${ends.length} of them as a run ended (${ends.filter(({ foundS }) => foundS === 'finished').length} lay on the shelf already)`,
);
console.log(
  `seconds of a run that were lost: most ${Math.max(...lost).toFixed(2)}, mean ${(lost.reduce((a, b) => a + b, 0) / lost.length).toFixed(2)} (${MOST_LOST_S} allowed)`,
);
process.exitCode = lost.some((s) => s > MOST_LOST_S) ? 1 : 0;
