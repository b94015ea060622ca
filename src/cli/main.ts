#!/usr/bin/env node
import { cac } from 'cac';
import { PROGRAM_VERSION } from '../core/run/record';
import { faultLine, InputFaults } from '../core/scenario/faults';
import { COMMANDS } from './commands';
import { UsageError } from './inputs';

const MINUS_VALUE = /^-(\d|\.\d|$)/;
/** The parser drops a lone `-`, so standard input goes through it under this name. */
const STANDARD_INPUT = 'standard-input:-';

/** `--gain -5` and `--turn -60..60` mean a value that begins with a minus, not an option; a lone `-` is standard input. */
function joinedValues(args: readonly string[]): string[] {
  const out: string[] = [];
  for (const arg of args) {
    const last = out.at(-1);
    if (MINUS_VALUE.test(arg) && last?.startsWith('--') && !last.includes('=') && last !== '--json') out[out.length - 1] = `${last}=${arg}`;
    else out.push(arg === '-' ? STANDARD_INPUT : arg);
  }
  return out;
}

function program() {
  const cli = cac('faintward');
  for (const command of COMMANDS) {
    const made = cli.command(`${command.name} ${command.takes}`.trim(), command.help);
    for (const [flag, help] of command.options) made.option(flag, help);
    made.option('--json', 'one JSON document on standard output');
    made.action((...all: unknown[]) => {
      const options = all.at(-1) as Record<string, unknown>;
      const files = (all.slice(0, -1).flat() as (string | undefined)[]).filter((name) => name !== undefined);
      return command.run(
        files.map((name) => (name === STANDARD_INPUT ? '-' : name)),
        options,
        options['json'] === true,
      );
    });
  }
  cli.help();
  cli.version(PROGRAM_VERSION);
  return cli;
}

/** @returns the exit code: 0 done, 1 the input is wrong, 2 wrong usage */
async function main(args: readonly string[]): Promise<number> {
  const cli = program();
  try {
    cli.parse(['node', 'faintward', ...joinedValues(args)], { run: false });
    if (cli.options['help'] === true || cli.options['version'] === true) return 0;
    if (!cli.matchedCommand) {
      const name = cli.args[0];
      throw new UsageError(name === undefined ? 'name a command' : `no command "${name}"`);
    }
    return (await cli.runMatchedCommand()) ?? 0;
  } catch (error) {
    return told(error);
  }
}

function told(error: unknown): number {
  if (error instanceof InputFaults) {
    for (const fault of error.faults) process.stderr.write(`${faultLine(fault)}\n`);
    return 1;
  }
  if (error instanceof UsageError || (error as Error).name === 'CACError') {
    process.stderr.write(`faintward: ${(error as Error).message}. See faintward --help.\n`);
    return 2;
  }
  throw error;
}

process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0); // the reader has seen enough
  throw error;
});
process.exitCode = await main(process.argv.slice(2));
