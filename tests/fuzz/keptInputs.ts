import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';

const FOLDER = 'tests/fuzz/corpus';

/** An input that is kept for ever: `<format>--<what>.txt`. */
export type Kept = { readonly file: string; readonly format: string; readonly text: string };

export const keptInputs = (): readonly Kept[] =>
  readdirSync(FOLDER)
    .filter((file) => file.endsWith('.txt'))
    .sort()
    .map((file) => ({ file, format: file.split('--')[0]!, text: readFileSync(`${FOLDER}/${file}`, 'utf8') }));

/** Puts an input that did harm into the corpus, so that every later test tries it again. */
export function keepInput(format: string, what: string, text: string): string {
  mkdirSync(FOLDER, { recursive: true });
  const file = `${FOLDER}/${format}--${what}.txt`;
  writeFileSync(file, text);
  return file;
}
