import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { lengthSaid, lengthText, readDeg, scaleLength } from '../../src/browser/ground/measures';
import { bearingText } from '../../src/browser/ground/words';
import { change } from '../../src/browser/storage/settings';
import { readRecording } from '../../src/core/run/record';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { playerAt } from './player';

let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;
let page: Page;

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  const context = await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US', acceptDownloads: true });
  page = await context.newPage();
  await page.goto(site.url);
  await playerAt(page).openExercise('tests/browser/short-walk.json');
});

afterEach(() => change({ north: 'true', declinationDeg: 0, lengths: 'metres' }));

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

// Common practice in every map's margin: magnetic bearing = true bearing less east declination.
test('with 12° east a true bearing of 5° reads 353°, with 12° west 17°, and without a choice it stays', () => {
  change({ north: 'magnetic', declinationDeg: 12 });
  expect(readDeg(5)).toBe(353);
  expect(bearingText(5)).toBe('353°');
  change({ declinationDeg: -12 });
  expect(bearingText(5)).toBe('017°');
  change({ north: 'true' });
  expect(bearingText(5)).toBe('005°');
});

// International yard and pound agreement of 1959: a yard is 0.9144 m; a mile has 1,760 of them.
test('914.4 m are 1,000 yards, 1,609.344 m a mile, and the scale shows round lengths', () => {
  expect(lengthText(914.4)).toEqual(['914', 'm']);
  expect(lengthText(1_609.344)).toEqual(['1.61', 'km']);
  change({ lengths: 'yards' });
  expect(lengthText(914.4)).toEqual(['1000', 'yd']);
  expect(lengthText(1_609.344)).toEqual(['1.00', 'mi']);
  expect(lengthSaid(91.44)).toBe('100 yards');
  expect(scaleLength(200)).toEqual({ m: 182.88, text: '200 yd' });
  expect(scaleLength(1_700)).toEqual({ m: 1_609.344, text: '1 mi' });
});

test('chosen while the run rests, bearings and lengths read otherwise on ground and notebook; the run file keeps degrees true', async () => {
  const player = playerAt(page);
  const trueDeg = await player.headingDeg();
  await player.press('m');
  await player.press('p');
  await page.getByRole('button', { name: 'Magnetic' }).press('Enter');
  for (let i = 0; i < 20; i++) await page.getByRole('button', { name: 'Declination farther east' }).press('Enter');
  await page.getByRole('button', { name: 'Yards' }).press('Enter');
  expect(await page.locator('.settings').first().textContent()).toContain('10.0° east');
  await page.getByRole('button', { name: 'Go on', exact: true }).last().press('Enter');
  expect(await player.headingDeg()).toBe(trueDeg - 10);
  expect(await page.locator('.hold-heading .unit').textContent()).toBe(' magnetic');
  expect(await page.locator('.notebook-bearing b').textContent()).toBe(`${trueDeg - 10}°`);
  expect(await page.locator('.bar-walked').textContent()).toMatch(/yd$/);
  expect(await page.locator('.map-scale-words').textContent()).toMatch(/yd/);
  expect(await page.locator('.walk-pace .unit').textContent()).toBe('yd/s');

  await player.wait(2_500);
  await page.goto('about:blank');
  await page.goto(site.url);
  await page.getByRole('button', { name: /Go on with Short walk/ }).click();
  await page.locator('.map-window canvas').waitFor({ timeout: 60_000 });
  expect(await player.headingDeg()).toBe(trueDeg - 10);
  await page.getByRole('button', { name: 'Give up and see the debrief' }).click();
  await page.getByRole('button', { name: 'See the grade' }).click();
  await page.locator('.technique-score').waitFor({ timeout: 60_000 });
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save run file' }).click();
  const text = readFileSync((await (await saving).path())!, 'utf8');
  expect(readRecording('saved run', text).log.map(([, { type }]) => type)).toEqual(['mark', 'giveUp']);
  expect(text).not.toContain('declination');
});
