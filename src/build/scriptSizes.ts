import { gzipSync } from 'node:zlib';
import type { Rolldown } from 'vite';

/**
 * Script that a screen waits for, kB of 1,000 bytes by gzip: the chunks named here with all that they import. More fails the build, so
 * a limit is set a little above what it is and comes down with it. The goal of the Listening room is 120 with its sound.
 */
const SCREENS: readonly { readonly screen: string; readonly chunks: readonly string[]; readonly mostKb: number }[] = [
  { screen: 'Listening room with its sound', chunks: ['index', 'mountListening', 'output'], mostKb: 120 },
  { screen: 'drills with their sound', chunks: ['index', 'mountDrills', 'output'], mostKb: 132 },
  { screen: 'start page', chunks: ['index', 'main'], mostKb: 174 },
  { screen: 'debrief', chunks: ['index', 'main', 'Debrief'], mostKb: 252 },
  { screen: 'ground with its map', chunks: ['index', 'main', 'Ground', 'mapScene', 'output'], mostKb: 370 },
];

const kbOf = (text: string): number => gzipSync(text).length / 1000;

/** One line for each screen: what it takes and what it may take. `over` names those that take more. @throws Error for an unknown chunk */
export function screenSizes(bundle: Rolldown.OutputBundle): { readonly lines: readonly string[]; readonly over: readonly string[] } {
  const sized = SCREENS.map(({ screen, chunks, mostKb }) => {
    const files = new Set<string>();
    for (const name of chunks) addWithImports(bundle, fileOf(bundle, name), files);
    const kb = [...files].reduce((sum, file) => sum + kbOf((bundle[file] as Rolldown.OutputChunk).code), 0);
    return { line: `${screen}: ${kb.toFixed(0)} kB of script by gzip, ${mostKb} at most`, over: kb > mostKb };
  });
  return { lines: sized.map(({ line }) => line), over: sized.filter(({ over }) => over).map(({ line }) => line) };
}

function fileOf(bundle: Rolldown.OutputBundle, name: string): string {
  const found = Object.values(bundle).find((part) => part.type === 'chunk' && part.name === name);
  if (!found) throw new Error(`no chunk is named ${name}: mend the list of screens`);
  return found.fileName;
}

function addWithImports(bundle: Rolldown.OutputBundle, file: string, into: Set<string>): void {
  const part = bundle[file];
  if (part?.type !== 'chunk' || into.has(file)) return;
  into.add(file);
  for (const imported of part.imports) addWithImports(bundle, imported, into);
}
