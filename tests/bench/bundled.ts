import { mkdirSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';

const OUT = resolve('node_modules/.cache/bench');

/**
 * A file of figures made into one script as the program itself is. Run straight from its source it would be slower than what people get: the
 * runner gives every function its name by a call each time one is made, which alone doubles the time for all waves at a place.
 */
export async function bundled<Made>(file: string): Promise<Made> {
  mkdirSync(OUT, { recursive: true });
  await build({
    configFile: false,
    logLevel: 'error',
    build: { ssr: file, outDir: OUT, emptyOutDir: false, target: 'es2022', rolldownOptions: { output: { entryFileNames: '[name].mjs' } } },
    ssr: { noExternal: true },
  });
  return (await import(pathToFileURL(`${OUT}/${basename(file, '.ts')}.mjs`).href)) as Made;
}
