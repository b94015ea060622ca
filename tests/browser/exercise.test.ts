import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openExercise } from '../../src/core/run/exercise';
import { readRecording } from '../../src/core/run/record';
import { gradeRun } from '../../src/core/technique/grade';
import { cli, json } from '../cli/runCli';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { playerAt } from './player';

const EXERCISE = 'tests/browser/short-walk.json';
let browser: Browser;
let context: BrowserContext;
let site: Awaited<ReturnType<typeof openBuiltPage>>;
let page: Page;
const troubles: string[] = [];

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  context = await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US', acceptDownloads: true });
  page = await context.newPage();
  page.on('pageerror', ({ message }) => troubles.push(message));
  page.on('console', (line) => {
    if (line.type() === 'error') troubles.push(line.text());
  });
  await page.goto(site.url);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** Faults that axe finds, as lines that say where. */
async function accessFaults(): Promise<readonly string[]> {
  await page.getByRole('main').waitFor();
  const { violations } = await new AxeBuilder({ page: page as never }).analyze();
  return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${String(target)}`));
}

test('a person plays an exercise to the find with keys alone, and the saved run gets the shown grade anywhere else', async () => {
  const player = playerAt(page);
  expect(await accessFaults()).toEqual([]);
  await player.openExercise(EXERCISE);
  expect(await accessFaults()).toEqual([]);

  await player.gainTo(30);
  await player.hold('ArrowRight', 8_200);
  await player.turnTo(45);
  await player.press('m');
  for (let i = 0; i < 3; i++) await player.press('x');
  await player.press(' ');
  await page.waitForFunction(
    () => Number.parseFloat(document.querySelector('.bar-walked')!.textContent!.replace(/[^0-9.]/g, '')) >= 90,
    null,
    {
      timeout: 120_000,
    },
  );
  await player.press(' ');
  await player.press('m');
  await player.press('f');

  await page.getByRole('heading', { name: 'How did it go?' }).waitFor({ timeout: 20_000 });
  expect(await accessFaults()).toEqual([]);
  await page.getByRole('button', { name: 'Quiet gain: mostly' }).click();
  await page.getByRole('button', { name: 'See the grade' }).click();
  await page.locator('.technique-score').waitFor({ timeout: 60_000 });
  expect(await accessFaults()).toEqual([]);
  expect(await page.locator('.outcome').textContent()).toContain('found');
  const shownScores = await page.locator('.habit-score').allTextContents();

  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save run file' }).click();
  const path = (await (await saving).path())!;
  const recording = readRecording('saved run', readFileSync(path, 'utf8'));
  const grade = gradeRun(openExercise(recording.scenario), recording);
  expect(grade.outcome.found).toBe(true);
  expect(grade.replayMatches).toBe(true);
  const scores = Object.values(grade.habits).map(({ score }) => (score === null ? 'not shown' : String(Math.round(score))));
  expect(shownScores).toEqual(scores);
  type Graded = { found: boolean; replayMatches: boolean; habits: Record<string, { score: number | null }> };
  const onCommandLine = json<Graded>(cli(['grade', path, '--json']));
  expect([onCommandLine.found, onCommandLine.replayMatches]).toEqual([true, true]);
  const told = Object.values(onCommandLine.habits).map(({ score }) => (score === null ? 'not shown' : String(Math.round(score))));
  expect(told).toEqual(shownScores);
  expect(troubles).toEqual([]);
});

test('a run that was left with its tab is offered again and goes on from where it was', async () => {
  await page.goto(`${site.url}#/`);
  const player = playerAt(page);
  await player.openExercise(EXERCISE);
  await player.press(' ');
  await player.wait(5_000);
  await page.close();
  page = await context.newPage();
  await page.goto(site.url);
  await page.getByRole('button', { name: /Go on with Short walk/ }).click();
  await page.locator('.map-window canvas').waitFor({ timeout: 60_000 });
  const seconds = (await page.locator('.bar-number').first().textContent())!.replace(/[^0-9:]/g, '').split(':');
  expect(Number(seconds[0]) * 60 + Number(seconds[1])).toBeGreaterThanOrEqual(2);
  await page.getByRole('button', { name: 'Go on', exact: true }).last().click();
  await page.locator('.sheet').waitFor({ state: 'detached' });
});
