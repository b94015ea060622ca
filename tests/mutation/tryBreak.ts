/**
 * Runs the tests of a folder with one drawn break in place, as a process of its own that can be ended: a break may never come to an end.
 * Ends with 0 where they pass, 1 where one fails. The source is broken as it is read, never on disk.
 */
import { resolve } from 'node:path';
import { startVitest } from 'vitest/node';
import { brokenText, type DrawnBreak, TRIED } from './drawnBreaks';

const { folder, one } = JSON.parse(process.argv[2]!) as { readonly folder: string; readonly one: DrawnBreak | null };
const file = one ? resolve(one.file) : '';
const run = await startVitest(
  'test',
  [],
  {
    config: false,
    watch: false,
    include: [...TRIED[folder]!],
    reporters: [{}],
    bail: 1,
    pool: 'threads',
    isolate: false,
    maxWorkers: 1,
    testTimeout: 120_000,
  },
  { plugins: [{ name: 'break', enforce: 'pre', transform: (code, id) => (one && id === file ? brokenText(code, one) : null) }] },
);
const failed = run.state.getCountOfFailedTests() > 0 || run.state.getFiles().some(({ result }) => result?.state === 'fail');
process.exit(failed ? 1 : 0);
