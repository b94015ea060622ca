import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { hatchLines } from '../../src/browser/map/hatchLines';
import { readRecording } from '../../src/core/run/record';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { playerAt } from './player';

let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;
let page: Page;

const plain = JSON.parse(readFileSync('tests/browser/short-walk.json', 'utf8'));
/** A weak tag in the far corner: nothing is heard of it from the start at a low gain. */
const exercise = { ...plain, title: 'Nothing here', tags: [{ ...plain.tags[0], at: [930, 930], eirpDbm: -25 }] };
const slip = () => page.getByRole('complementary', { name: 'Rule out ground' });
const told = () => slip().getByRole('status').textContent();

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  const context = await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US', acceptDownloads: true });
  page = await context.newPage();
  await page.goto(site.url);
  await playerAt(page).openExercise({
    name: 'nothing-here.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(exercise)),
  });
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

test('by keys: turned once round in silence, all in view is hatched, taken back, and hatched again by hand in the map’s middle', async () => {
  const player = playerAt(page);
  await player.gainTo(25);
  await player.press('0');
  await player.hold('ArrowRight', 8_400);
  await player.press('v');
  await expect.poll(told, { timeout: 10_000 }).toMatch(/^(Under 1|\d+) % of the map is ruled out\.$/);
  const { violations } = await new AxeBuilder({ page: page as never }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);

  await player.press('u');
  await expect.poll(told).toContain('Hatch what you see');
  await player.press('b');
  await player.press('Enter');
  await expect.poll(told, { timeout: 10_000 }).toContain('of the map is ruled out');
  expect(await page.locator('.rule-line').count()).toBe(2);
  expect(await page.locator('.rule-line.struck').count()).toBe(1);
  await player.press('Escape');
  expect(await slip().count()).toBe(0);
});

test('the debrief says whether the tag lay there, and the run file carries what was ruled out', async () => {
  const player = playerAt(page);
  await player.press('p');
  await page.getByRole('button', { name: 'Give up and see the debrief' }).click();
  await page.getByRole('button', { name: 'See the grade' }).click();
  const part = page.getByRole('region', { name: 'Ground ruled out' });
  await part.waitFor({ timeout: 60_000 });
  expect(await part.textContent()).toMatch(/You ruled out .* of the map, and no tag lay there; .* could have been ruled out\./);
  await part.getByRole('button', { name: 'Show it on the map' }).press('Enter');
  expect(await part.getByRole('button', { name: 'Take it off the map' }).getAttribute('aria-pressed')).toBe('true');
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save run file' }).click();
  const recording = readRecording('saved run', readFileSync((await (await saving).path())!, 'utf8'));
  expect(recording.log.map(([, { type }]) => type).filter((type) => /ule|ake/.test(type))).toEqual(['ruleOut', 'takeBack', 'ruleOut']);
});

test('hatching runs through the hatched squares and through nothing else, either way up', () => {
  const hatched = Uint8Array.from([1, 1, 0, 0, 1, 0, 0, 0, 1]);
  const grid = { columns: 3, cellM: 10, hatched };
  expect(hatchLines(grid, 10)).toEqual([
    [
      { eM: 0, nM: 0 },
      { eM: 30, nM: 30 },
    ],
    [
      { eM: 10, nM: 0 },
      { eM: 20, nM: 10 },
    ],
  ]);
  const falling = hatchLines(grid, 10, true);
  expect(falling).toHaveLength(4);
  for (const [from, to] of falling) expect(to.eM - from.eM).toBe(from.nM - to.nM);
  // From afar every other stroke is left out.
  expect(hatchLines(grid, 0.6)).toHaveLength(1);
});
