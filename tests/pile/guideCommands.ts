import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';

const PAGE = 'assets/guide/club-evening.md';

/** The commands of the guide's part "A pile of runs", as a reader would copy them: one block of code for each job runner. */
export function guideCommands(): readonly string[] {
  const part = readFileSync(PAGE, 'utf8')
    .split('\n## ')
    .find((text) => text.startsWith('A pile of runs'));
  const blocks = [...(part ?? '').matchAll(/```sh\n([\s\S]*?)```/g)].map(([, code]) => code!);
  if (blocks.length === 0) throw new Error(`${PAGE} has no commands for a pile of runs`);
  return blocks;
}

/** The program that a block hands the shares to. */
export const sharerOf = (block: string): 'parallel' | 'xargs' => (block.includes('parallel --pipe') ? 'parallel' : 'xargs');
export const isHere = (program: string): boolean => spawnSync(program, ['--version']).error === undefined;

export type Grade = { readonly name?: string; readonly replayMatches?: boolean; readonly faults?: readonly unknown[] };
export type Check = { readonly kind: string; readonly faults: readonly unknown[] };
type Answers = {
  readonly status: number | null;
  readonly err: string;
  readonly grades: readonly Grade[];
  readonly checks: readonly Check[];
};

/** A folder with these files in `runs`, in their order; inside the checkout, so that `npm run` in it finds the program. */
export function pileFolder(name: string, texts: Iterable<string>): string {
  const folder = `node_modules/.cache/${name}`;
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(`${folder}/runs`, { recursive: true });
  let i = 0;
  for (const text of texts) writeFileSync(`${folder}/runs/${String(i++).padStart(5, '0')}.json`, text);
  return folder;
}

/** Does in a folder what a block of the guide says. */
export function ranBlock(folder: string, block: string): Answers {
  const { status, stderr } = spawnSync('bash', ['-c', block], { cwd: folder, encoding: 'utf8' });
  return { status, err: stderr, grades: linesOf(`${folder}/grades.ndjson`), checks: linesOf(`${folder}/checks.ndjson`) };
}

const linesOf = <T>(file: string): readonly T[] =>
  readFileSync(file, 'utf8')
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as T);
