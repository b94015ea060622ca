import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { startVitest } from 'vitest/node';
import { MUTANTS, type Mutant, timesFound } from './mutants';

/**
 * Breaks the habits on purpose, one break at a time, and runs their tests: every break must make one fail. The sources are broken
 * as they are read, never on disk. The result goes into the guide. `npm run mutation -- PATTERN` tries those
 * alone whose file and name match a regular expression, and leaves the page as it is.
 */

const TESTS = 'tests/core/technique';
const PAGE = 'assets/guide/validity.md';

/** The tests of a habit, those of its parts' own files apart. */
const HABIT_TESTS: Readonly<Record<string, readonly string[]>> = {
  walkAndListen: ['walkAndListen', 'followsPart', 'keepsLinePart'],
  grade: ['grade'],
};

/** The tests that have to notice a break: those of the file, else those of its habit. */
function testsOf({ file, habit }: Mutant): readonly string[] {
  const path = (name: string) => `${TESTS}/${name}.test.ts`;
  return existsSync(path(file)) ? [path(file)] : (HABIT_TESTS[habit] ?? [habit]).map(path);
}

/** Do these tests pass with the break in place? */
async function pass({ file, find, put }: Mutant, files: readonly string[]): Promise<boolean> {
  const broken = resolve(`src/core/technique/${file}.ts`);
  const run = await startVitest(
    'test',
    [],
    {
      config: false,
      watch: false,
      include: [...files],
      reporters: [{}],
      bail: 1,
      pool: 'threads',
      isolate: false,
      maxWorkers: 1,
      testTimeout: 60_000,
    },
    { plugins: [{ name: 'break', enforce: 'pre', transform: (code, id) => (id === broken ? code.replace(find, () => put) : null) }] },
  );
  const failed = run.state.getCountOfFailedTests() > 0 || run.state.getFiles().some(({ result }) => result?.state === 'fail');
  await run.close();
  process.exitCode = 0; // a failing test is what is wanted here
  return !failed;
}

const noticed = async (mutant: Mutant): Promise<boolean> => !(await pass(mutant, testsOf(mutant)));

function resultTable(survivors: readonly Mutant[]): string {
  const habits = [...new Set(MUTANTS.map(({ habit }) => habit))];
  const rows = habits.map((habit) => {
    const of = MUTANTS.filter((mutant) => mutant.habit === habit);
    const numbers = of.filter(({ what }) => /^[A-Z_]+ /.test(what)).length;
    const left = of.filter((mutant) => survivors.includes(mutant)).map(({ file, what }) => `${file}: ${what}`);
    return `| ${habit} | ${numbers} | ${of.length - numbers} | ${of.length - left.length} of ${of.length} | ${left.join('; ') || '–'} |`;
  });
  const all = `${MUTANTS.length - survivors.length} of ${MUTANTS.length}`;
  return [
    `${all} breaks make a test fail. Each number of the guide's list was made a quarter larger and a fifth smaller; signs and comparisons were turned, parts left out (\`npm run mutation\`, list in \`tests/mutation\`).`,
    ['| habit | numbers shifted | code broken | noticed | not noticed |', '| --- | --- | --- | --- | --- |', ...rows].join('\n'),
  ].join('\n\n');
}

/** The section of the page that the study leaves to this command. */
function intoPage(text: string): void {
  if (!existsSync(PAGE)) return;
  const page = readFileSync(PAGE, 'utf8');
  writeFileSync(
    PAGE,
    page.replace(/(## 7\. Mutation\n\n)[\s\S]*?(?=\n\n## )/, (_, head: string) => `${head}${text}`),
  );
}

async function main(wanted: string | undefined): Promise<void> {
  const chosen = MUTANTS.filter(({ file, what }) => !wanted || new RegExp(wanted).test(`${file} ${what}`));
  const survivors: Mutant[] = [];
  const plain = { file: '', find: '', put: '', habit: '', what: '' };
  const all = [...new Set(MUTANTS.flatMap(testsOf))];
  if (!wanted && !(await pass(plain, all))) throw new Error('the tests fail without any break');
  for (const [i, mutant] of chosen.entries()) {
    if (timesFound(mutant) !== 1) throw new Error(`${mutant.file}: ${mutant.what} does not apply`);
    const found = await noticed(mutant);
    if (!found) survivors.push(mutant);
    console.log(`${i + 1}/${chosen.length} ${mutant.file}: ${mutant.what}: ${found ? 'noticed' : 'NOT NOTICED'}`);
  }
  if (!wanted) intoPage(resultTable(survivors));
  process.exit(survivors.length > 0 ? 1 : 0);
}

await main(process.argv[2]);
