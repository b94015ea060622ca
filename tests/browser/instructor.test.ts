import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { rowOf } from '../../src/core/club/rowOf';
import { openExercise } from '../../src/core/run/exercise';
import { readRecording } from '../../src/core/run/record';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { playerAt } from './player';

/** The short walk with a line across it, so that there is noise to raise; the tag lies 106 m off at 45 degrees. */
const walk = JSON.parse(readFileSync('tests/browser/short-walk.json', 'utf8'));
const line = {
  voltage: 'medium',
  route: [
    [100, 620],
    [900, 640],
  ],
  spanM: 100,
  supportHeightM: 12,
  wireHeightM: 10,
  conductors: 3,
};
const EXERCISE = {
  name: 'watched.json',
  mimeType: 'application/json',
  buffer: Buffer.from(JSON.stringify({ ...walk, title: 'Watched walk', ground: { ...walk.ground, powerLines: [line] } })),
};
let browser: Browser;
let context: BrowserContext;
let site: Awaited<ReturnType<typeof openBuiltPage>>;
let learner: Page;
let instructor: Page;

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  context = await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US', acceptDownloads: true });
  learner = await context.newPage();
  await learner.goto(site.url);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

const truthOf = (name: string) =>
  instructor
    .locator('.watch-truth > div')
    .filter({ has: instructor.locator('dt', { hasText: new RegExp(`^${name}$`) }) })
    .locator('dd');
const clock = () => learner.locator('.bar-number').first().textContent();
const logged = (words: string) => instructor.locator('.watch-log li', { hasText: words }).waitFor({ timeout: 10_000 });
const axeFaults = async (page: Page) =>
  (await new AxeBuilder({ page: page as never }).analyze()).violations.map(({ id, nodes }) => `${id}: ${String(nodes[0]?.target)}`);

test('a second window says that no run goes on, and shows one by itself once it is opened, with the truth', async () => {
  instructor = await context.newPage();
  await instructor.goto(`${site.url}#/instructor`);
  await instructor.getByText('No run goes on yet.').waitFor();
  expect(await axeFaults(instructor)).toEqual([]);
  await playerAt(learner).openExercise(EXERCISE);
  await instructor.getByRole('heading', { name: 'Watched walk' }).waitFor({ timeout: 20_000 });
  // 75 m east and 75 m north: 106 m at 45 degrees.
  expect(await truthOf('Tag').textContent()).toContain('106 m, 045°');
  await playerAt(learner).turnTo(225);
  await instructor.waitForFunction(() => document.querySelector('.watch-truth')!.textContent!.includes('the back looks at it'));
  expect(await axeFaults(instructor)).toEqual([]);
});

test('what is stopped stands still and can’t be let go on by the walker, until it is let go on', async () => {
  await instructor.getByRole('button', { name: 'Stop the run' }).click();
  const sheet = learner.getByRole('dialog', { name: 'The instructor has stopped the run' });
  await sheet.waitFor();
  const stoodAt = await clock();
  expect(await sheet.getByRole('button', { name: 'Go on', exact: true }).count()).toBe(0);
  await learner.keyboard.press('p');
  await learner.waitForTimeout(1_500);
  expect(await sheet.isVisible()).toBe(true);
  expect(await clock()).toBe(stoodAt);
  expect(await axeFaults(learner)).toEqual([]);
  await instructor.getByRole('button', { name: 'Let the run go on' }).click();
  await sheet.waitFor({ state: 'detached' });
  await learner.waitForFunction((before) => document.querySelector('.bar-number')!.textContent !== before, stoodAt);
});

test('a click into the instructor’s window leaves the run under way, and one that is not watched rests', async () => {
  await learner.evaluate(() => window.dispatchEvent(new Event('blur')));
  await learner.waitForTimeout(300);
  expect(await learner.locator('.sheet').count()).toBe(0);
});

test('a hint is seen, said to a screen reader, and put away', async () => {
  await instructor.getByLabel('Hint for the walker').fill('Turn round: the <b>back</b> looks at it');
  await instructor.getByRole('button', { name: 'Send' }).click();
  const slip = learner.getByRole('complementary', { name: 'Hint from the instructor' });
  await slip.waitFor();
  expect(await slip.textContent()).toContain('Turn round: the <b>back</b> looks at it');
  await learner.waitForFunction(() =>
    document.querySelector('[aria-label="What changed"]')!.textContent!.includes('from the instructor: Turn round'),
  );
  expect(await axeFaults(learner)).toEqual([]);
  await slip.getByRole('button', { name: 'Put the hint away' }).click();
  await slip.waitFor({ state: 'detached' });
  await instructor.getByRole('button', { name: 'Less gain: only as much as the ear needs.' }).click();
  await slip.waitFor();
});

test('the tag is weakened and line noise raised by keys, and the run says how it stands then', async () => {
  const least = async () => Number(/least here (−?-?\d+)/.exec((await truthOf('Gain').locator('.number').textContent())!)?.[1]);
  await instructor.waitForFunction(() => /least here/.test(document.querySelector('.watch-truth')!.textContent!));
  const before = await least();
  const weaken = instructor.getByRole('slider', { name: 'Weaken the tag' });
  await weaken.focus();
  for (let i = 0; i < 6; i++) {
    await weaken.press('ArrowRight');
    await instructor.waitForFunction(
      (want) => document.querySelector('[aria-label="Weaken the tag"]')!.getAttribute('aria-valuenow') === want,
      String(2 * (i + 1)),
    );
  }
  await logged('The tag was made 12 dB weaker than it is');
  await instructor.waitForTimeout(2_000);
  expect(Math.abs((await least()) - before - 12)).toBeLessThanOrEqual(1);
  await instructor.getByRole('slider', { name: 'Raise line noise' }).press('End');
  await logged('Line noise was raised by 40 dB');
});

test('all of it stands in the debrief and in the run file, which replays and tells the club so', async () => {
  await learner.bringToFront();
  await learner.getByRole('button', { name: 'Pause' }).click();
  await learner.getByRole('button', { name: 'Give up and see the debrief' }).click();
  await learner.getByRole('button', { name: 'See the grade' }).click();
  await learner.locator('.technique-score').waitFor({ timeout: 60_000 });
  const told = await learner.getByRole('region', { name: 'The instructor', exact: true }).locator('li').allTextContents();
  expect(told.length).toBe(1 + 1 + 1 + 2 + 1 + 1); // watched, weakened, noise, two hints, stopped, let go on
  expect(told.join('\n')).toContain('The tag was made 12 dB weaker than it is');
  expect(await learner.locator('.outcome').textContent()).toContain('watched or changed it');
  await instructor.getByText('given up').waitFor();
  const saving = learner.waitForEvent('download');
  await learner.getByRole('button', { name: 'Save run file' }).click();
  const recording = readRecording('saved run', readFileSync((await (await saving).path())!, 'utf8'));
  const row = rowOf(openExercise(recording.scenario), recording);
  expect([row.mark, row.withInstructor]).toEqual(['checked', true]);
});

test('with the instructor’s window closed a stopped run is the walker’s again', async () => {
  await learner.getByRole('button', { name: 'Again', exact: true }).click();
  await learner.locator('.map-window canvas').waitFor({ timeout: 60_000 });
  await instructor.getByRole('button', { name: 'Stop the run' }).click();
  await learner.getByRole('dialog', { name: 'The instructor has stopped the run' }).waitFor();
  await instructor.close();
  await learner.getByRole('dialog', { name: 'Paused' }).waitFor({ timeout: 15_000 });
  await learner.getByRole('button', { name: 'Go on', exact: true }).last().click();
  await learner.locator('.sheet').waitFor({ state: 'detached' });
});
