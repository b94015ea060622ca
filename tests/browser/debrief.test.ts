import { rmSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { cli } from '../cli/runCli';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';

const RUN = 'node_modules/.cache/debrief-run.json';
let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;
let page: Page;
const troubles: string[] = [];

beforeAll(async () => {
  cli(['walk', 'tests/browser/short-walk.json', '--as', 'loud-handed-20', '--out', RUN, '--json']);
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  const context = await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US' });
  page = await context.newPage();
  page.on('pageerror', ({ message }) => troubles.push(message));
  await page.goto(site.url);
  await page.locator('input[aria-label="Run file"]').setInputFiles(RUN);
  await page.locator('.technique-score').waitFor({ timeout: 120_000 });
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
  rmSync(RUN, { force: true });
});

const slider = () => page.getByRole('slider', { name: 'Time in the run' });
const atS = async () => Number(await slider().getAttribute('aria-valuenow'));

test('the first screen answers what to do differently: a sentence, five habits and the map lie in the window', async () => {
  expect((await page.locator('.debrief-sentence').textContent())!.length).toBeGreaterThan(20);
  expect(await page.locator('.habit-score').count()).toBe(5);
  for (const part of ['.debrief-sentence', '.habits', '.run-map', '.scrubber']) {
    const { y, height } = (await page.locator(part).boundingBox())!;
    expect(y).toBeGreaterThanOrEqual(0);
    expect(y + height).toBeLessThanOrEqual(768);
  }
});

test('the scrubber goes by keys: to the beginning, by seconds and minutes, and plays on', async () => {
  await slider().focus();
  await page.keyboard.press('Home');
  expect(await atS()).toBe(0);
  for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Shift+ArrowRight');
  expect(await atS()).toBe(13);
  await page.keyboard.press('Tab');
  await page.locator('.scrubber-play').focus();
  await page.keyboard.press('Enter');
  await page.waitForFunction(() => Number(document.querySelector('[role="slider"]')!.getAttribute('aria-valuenow')) >= 15);
  await page.keyboard.press('Enter');
  const stoppedS = await atS();
  await page.waitForTimeout(1_200);
  expect(await atS()).toBe(stoppedS);
});

test('a moment takes the scrubber to its beginning, and says what to do next time', async () => {
  const moment = page.locator('.moment-line[aria-pressed]').first();
  const [minutes, seconds] = (await moment.locator('.moment-clock').textContent())!.split(':').map(Number);
  await moment.focus();
  await page.keyboard.press('Enter');
  expect(await atS()).toBe(minutes! * 60 + seconds!);
  expect((await page.locator('.moment-slip b').textContent())!.length).toBeGreaterThan(10);
  await page.keyboard.press('Escape');
  await page.locator('.moment-slip').waitFor({ state: 'detached' });
});

test('a moment opens the demonstration that lets it be heard again, its settings in the room', async () => {
  await page.locator('.moment-line[aria-pressed]').first().click();
  const link = page.locator('.moment-slip').getByRole('link', { name: 'Hear this again' });
  const title = (await link.textContent())!.replace('Hear this again: ', '');
  const asked = new URLSearchParams((await link.getAttribute('href'))!.split('?')[1]!);
  const opening = page.context().waitForEvent('page');
  await link.click();
  const room = await opening;
  await room.locator('.room-ring').waitFor({ timeout: 30_000 });
  expect(await room.locator('.room-title h1').textContent()).toBe(title);
  const slid = async (name: string) => (await room.getByRole('slider', { name, exact: true }).getAttribute('aria-valuenow'))!;
  expect(await slid('Antenna heading')).toBe(asked.get('headingDeg'));
  expect(await slid('Gain')).toBe(asked.get('gainDb')); // close in, so the gain itself goes along, not how much was too much
  expect(await slid('Distance')).toBe(asked.get('walkM'));
  await room.close();
  await page.keyboard.press('Escape');
});

test('layers open by key, are worked out with progress, and are told in a sentence', async () => {
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await page.keyboard.press('l');
  await page.getByRole('button', { name: 'Ground in view of the tag' }).click();
  await page
    .locator('.layer-key')
    .getByText(/line of sight from \d+ % of the ground/)
    .waitFor({ timeout: 60_000 });
  await page.getByRole('button', { name: 'Nothing', exact: true }).click();
  await page.keyboard.press('Escape');
  await page.locator('.layers').waitFor({ state: 'detached' });
});

test('charts have a table, bearings their waves, and axe finds no fault', async () => {
  await page.locator('.numbers-table summary').first().focus();
  await page.keyboard.press('Enter');
  expect(await page.locator('.numbers-table[open] tbody tr').count()).toBeGreaterThan(20);
  await page.locator('.rose-wave').first().waitFor({ timeout: 60_000 });
  const { violations } = await new AxeBuilder({ page: page as never }).analyze();
  expect(violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${String(target)}`))).toEqual([]);
  expect(troubles).toEqual([]);
});
