import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { playerAt } from './player';

let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;
let page: Page;

const plain = JSON.parse(readFileSync('tests/browser/short-walk.json', 'utf8'));
const asking = { ...plain, title: 'Before you leave', tagCheck: true, kit: { ...plain.kit, startOffsetHz: -1_000 } };
const check = () => page.getByRole('region', { name: 'Tag check' });
const done = () => check().locator('.tag-check-line.done').count();

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  page = await (await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US' })).newPage();
  await page.goto(site.url);
  await playerAt(page).openExercise({
    name: 'asking.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(asking)),
  });
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

test('by keys: one dial to the clearest note at a faint level, both axes, the rate pressed out; then the check is done', async () => {
  const player = playerAt(page);
  await player.turnTo(45);
  await player.gainTo(20);
  await player.press('n');
  expect(await page.locator('.tag-button', { hasText: 'Tag check' }).count()).toBe(1);
  expect(await done()).toBeLessThan(4);
  const { violations } = await new AxeBuilder({ page: page as never }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  for (let i = 0; i < 20; i++) await player.press('.');
  // Down until the note is faint: the line says so itself.
  const note = check().locator('.tag-check-line').first();
  for (let gain = 0; gain < 20 && !(await note.getAttribute('class'))!.includes('done'); gain++) {
    await player.press('ArrowDown');
    await player.wait(900);
  }
  expect(await note.textContent()).toContain('done');
  await player.gainTo(30);
  await player.wait(1_800);
  await player.press('r');
  await player.wait(1_800);
  // 75 a minute, as it is listed: a press every 0.8 s of the run's own clock.
  for (let i = 0; i < 6; i++) {
    await player.press('y');
    await player.wait(790);
  }
  await expect.poll(done, { timeout: 10_000 }).toBe(4);
  expect(await page.locator('.tag-button', { hasText: 'Tag check' }).count()).toBe(0);
  expect(await check().textContent()).toMatch(/Counted 7\d a minute/);
});

test('the debrief says that the tag was checked', async () => {
  await playerAt(page).press('p');
  await page.getByRole('button', { name: 'Give up and see the debrief' }).click();
  await page.getByRole('button', { name: 'See the grade' }).click();
  const part = page.getByRole('region', { name: 'Tag check' });
  await part.waitFor({ timeout: 60_000 });
  expect(await part.textContent()).toContain('You checked the tag before leaving.');
});
