import { readFileSync } from 'node:fs';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { FORMATS } from './formats';
import { hostileText } from './hostileText';
import { keepInput, keptInputs } from './keptInputs';
import { prototypesNow, tryInput } from './tryInput';

/**
 * `npm run fuzz -- [inputs a format] [format …]`: spoilt files through every reader. What crashes or hangs one goes into the corpus.
 * 100,000 inputs a format unless told otherwise, shared among the saved seeds.
 */
const [inputsText = '100000', ...named] = process.argv.slice(2);
const inputs = Number(inputsText);
const { full } = JSON.parse(readFileSync('tests/fuzz/seeds.json', 'utf8')) as { readonly full: readonly string[] };

setFlagsFromString('--expose-gc');
const collectGarbage = runInNewContext('gc') as () => void;
const heapMb = () => {
  collectGarbage();
  return process.memoryUsage().heapUsed / 1e6;
};

const before = prototypesNow();
let harm = 0;
const say = (line: string) => process.stdout.write(`${line}\n`);
say('format      inputs     read  refused  crashes  hangs  slowest  heap above rest  inputs/s');
for (const { name, packed, samples, read } of FORMATS.filter(({ name: own }) => named.length === 0 || named.includes(own))) {
  const counts = { read: 0, refused: 0, crash: 0, slow: 0 };
  let [slowest, above] = [0, 0];
  for (const { text } of keptInputs().filter(({ format }) => format === name)) tryInput(read, text);
  const rest = heapMb();
  const from = performance.now();
  for (let i = 0; i < inputs; i++) {
    const seed = full[i % full.length]!;
    const text = hostileText(samples, seed, i, packed);
    let tried = tryInput(read, text);
    if (tried.kind === 'slow') tried = tryInput(read, text); // the machine may have been busy: what hangs, hangs again
    counts[tried.kind]++;
    slowest = Math.max(slowest, tried.ms);
    if (i % 20_000 === 0) above = Math.max(above, heapMb() - rest);
    if (tried.kind !== 'crash' && tried.kind !== 'slow') continue;
    harm++;
    say(`  ${tried.why}: ${keepInput(name, `${seed}-${i}`, text)}`);
  }
  above = Math.max(above, heapMb() - rest);
  const perS = inputs / ((performance.now() - from) / 1000);
  const cells = [counts.read, counts.refused, counts.crash, counts.slow].map((count, i) => String(count).padStart([9, 9, 9, 7][i]!));
  say(
    `${name.padEnd(9)}${String(inputs).padStart(9)}${cells.join('')}${`${slowest.toFixed(0)} ms`.padStart(9)}${`${above.toFixed(1)} MB`.padStart(17)}${perS.toFixed(0).padStart(10)}`,
  );
}
const touched = prototypesNow() !== before;
say(touched ? 'A prototype of JavaScript was changed.' : 'No prototype of JavaScript was changed.');
process.exitCode = harm > 0 || touched ? 1 : 0;
