import { rmSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import jsQR from 'jsqr';
import type { Browser, Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { QR_BYTES } from '../../src/core/scenario/link';
import { cli } from '../cli/runCli';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';

const RUN = 'node_modules/.cache/score-card-run.json';
let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;
let page: Page;
const troubles: string[] = [];

beforeAll(async () => {
  cli(['walk', 'tests/browser/short-walk.json', '--as', 'loud-handed-20', '--out', RUN, '--json']);
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  page = await browser.newPage({ viewport: { width: 1366, height: 900 }, locale: 'en-US' });
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

const faults = async (on: Page) => {
  const { violations } = await new AxeBuilder({ page: on as never }).analyze();
  return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${String(target)}`));
};
const saidBy = async (on: Page) => (await on.locator('.score-card').textContent())!;
let link = '';

test.each([
  [1366, 900],
  [390, 844],
])(
  'at %i × %i the code after the grade is read from the screen, holds at most 800 bytes and is the link beside it',
  async (width, height) => {
    await page.setViewportSize({ width, height });
    const show = page.locator('.score-show');
    await show.waitFor();
    if ((await show.getAttribute('aria-expanded')) === 'false') await show.click();
    const code = page.locator('.score-code .qr');
    await code.waitFor();
    await code.evaluate((qr) => qr.scrollIntoView({ block: 'center' }));
    const { data, width: wide, height: high } = PNG.sync.read(await page.screenshot());
    link = jsQR(new Uint8ClampedArray(data), wide, high)!.data;
    expect(link).toBe(await page.locator('.score-code').getByRole('textbox', { name: 'Link' }).inputValue());
    expect(link.length).toBeLessThanOrEqual(QR_BYTES);
    expect(link.startsWith(`${site.url}#/card/c1.`)).toBe(true);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
    expect(await faults(page)).toEqual([]);
  },
);

test('another phone opens it: the same card, marked as not replayed', async () => {
  const score = (await page.locator('.technique-score').textContent())!;
  const other = await (await browser.newContext({ viewport: { width: 390, height: 844 }, locale: 'en-US' })).newPage();
  await other.goto(link);
  await other.getByRole('heading', { name: 'Score card' }).waitFor();
  expect(await saidBy(other)).toBe(await saidBy(page));
  expect(await saidBy(other)).toContain('a walker of the program');
  expect(await saidBy(other)).toContain('Checkednot replayed');
  expect(await saidBy(other)).toMatch(
    new RegExp(`Technique${/not ranked/.test(score) ? 'not ranked' : score}Outcome(not )?found in \\d+:\\d\\d`),
  );
  expect(await faults(other)).toEqual([]);
  await other.getByRole('button', { name: 'Start page' }).click();
  await other.getByRole('heading', { name: 'Exercises', exact: true }).waitFor();
  await other.context().close();
});

test('a card that was changed on its way is none', async () => {
  const other = await browser.newPage();
  await other.goto(`${link.slice(0, -6)}AAAA`);
  await other.getByRole('heading', { name: 'No score card in this link' }).waitFor();
  expect(await other.getByRole('alert').textContent()).toContain('Mend: point the camera at the code again');
  expect(troubles).toEqual([]);
  await other.close();
});
