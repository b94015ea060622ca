import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { playerAt } from './player';

const EXERCISE = 'tests/browser/short-walk.json';
let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;
let context: BrowserContext;
let page: Page;
const line = () => page.locator('.first-minute');
const says = (words: RegExp) => expect.poll(() => line().getByRole('status').textContent(), { timeout: 10_000 }).toMatch(words);

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  context = await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US' });
  page = await context.newPage();
  await page.goto(site.url);
  await playerAt(page).openExercise(EXERCISE);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

test('by keys: turn, less gain, walk, mark; each line goes when it was done, in under a minute, and then it is never in the way again', async () => {
  const player = playerAt(page);
  const begunMs = Date.now();
  await player.press('c');
  await says(/^Turn the antenna: hold left arrow or right arrow/);
  const { violations } = await new AxeBuilder({ page: page as never }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  await player.hold('ArrowRight', 1_200);
  await says(/^Less gain: press down arrow/);
  await player.press('Shift+ArrowDown');
  await player.press('ArrowDown');
  await says(/^Walk ahead: press Space/);
  await player.press(' ');
  await says(/^Mark where it is loudest: press M/);
  await player.press(' ');
  await player.press('m');
  await says(/^That is all it takes/);
  expect(Date.now() - begunMs).toBeLessThan(60_000);
  await line().waitFor({ state: 'detached', timeout: 15_000 });

  await player.press('p');
  await page.getByRole('button', { name: 'Leave, go on later' }).click();
  await page.getByRole('button', { name: /Go on with Short walk/ }).click();
  await page.locator('.map-window canvas').waitFor({ timeout: 60_000 });
  await page.getByRole('button', { name: 'Go on', exact: true }).last().press('Enter');
  expect(await line().count()).toBe(0);
});

test('settings bring it back, with a mouse it speaks of the mouse, and it can be skipped', async () => {
  await playerAt(page).press('p');
  await page.getByRole('button', { name: 'Show them again' }).press('Enter');
  await page.getByRole('button', { name: 'Go on', exact: true }).last().press('Enter');
  await says(/^Turn the antenna/);
  await page.locator('.bar').click();
  await says(/drag round its dial/);
  await page.getByRole('button', { name: 'Skip the first steps' }).click();
  expect(await line().count()).toBe(0);
});

test('on a phone the words are for a finger, and the line leaves most of the map to be seen', async () => {
  const phone = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, locale: 'en-US' });
  page = await phone.newPage();
  await page.goto(site.url);
  await playerAt(page).openExercise(EXERCISE);
  expect(await line().isVisible()).toBe(false); // first the task is read
  await page.getByRole('button', { name: 'Put the task away' }).tap();
  await says(/^Turn the antenna: drag round its dial\.$/);
  const [own, map] = [(await line().boundingBox())!, (await page.locator('.map').boundingBox())!];
  expect(own.height * own.width).toBeLessThan(0.16 * map.height * map.width);
  expect(own.x + own.width).toBeLessThanOrEqual(390);
  const dial = (await page.locator('.dial').boundingBox())!;
  await page.touchscreen.tap(dial.x + dial.width - 20, dial.y + dial.height / 2);
  await says(/^Less gain: draw its knob down\.$/);
  await phone.close();
});
