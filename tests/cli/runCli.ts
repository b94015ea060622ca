import { spawnSync } from 'node:child_process';

export type Ran = { readonly code: number; readonly out: string; readonly err: string };

/** Runs the command line as a person does, in a process of its own. */
export function cli(args: readonly string[], input?: string): Ran {
  const ran = spawnSync(process.execPath, ['node_modules/tsx/dist/cli.mjs', 'src/cli/main.ts', ...args], {
    input,
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  return { code: ran.status ?? -1, out: ran.stdout, err: ran.stderr };
}

/** The one JSON document on standard output. */
export const json = <T>(ran: Ran): T => JSON.parse(ran.out) as T;
