import { readdirSync, readFileSync } from 'node:fs';
import { bundled } from './bundled';
import type { Figure } from './figure';

/** A figure that is a time may be told in short. */
type Told = Figure | { readonly name: string; readonly ms: number; readonly goalMs: number };

type Bench = { readonly figures: () => readonly Told[] | Promise<readonly Told[]> };

const whole = (told: Told): Figure => ('ms' in told ? { name: told.name, unit: 'ms', value: told.ms, goal: told.goalMs } : told);

/**
 * Prints the figures of every file beside this one: name, value, goal. Never fails on a slow figure: machines differ.
 * A file takes part by exporting a function `figures`; files without one are not even opened, since some of them are programs.
 */
async function printFigures(): Promise<void> {
  const here = new URL('.', import.meta.url);
  const textOf = (file: string) => readFileSync(new URL(file, here), 'utf8');
  const hasFigures = (file: string) => file.endsWith('.ts') && /^export (async function|function|const) figures\b/m.test(textOf(file));
  // What opens a browser times the built page; the rest is made into a script as the page is.
  const opensBrowser = (file: string) => textOf(file).includes("'../browser/");
  for (const file of readdirSync(here).filter(hasFigures).sort()) {
    const bench: Bench = opensBrowser(file) ? ((await import(`./${file}`)) as Bench) : await bundled<Bench>(`tests/bench/${file}`);
    for (const { name, unit, value, goal } of (await bench.figures()).map(whole)) {
      const measured = `${value < 10 ? value.toFixed(2) : value.toFixed(0)} ${unit}`;
      console.log(`${name.padEnd(56)} ${measured.padStart(10)}   goal ${goal} ${unit}${value <= goal ? '' : '   over'}`);
    }
  }
}

await printFigures();
