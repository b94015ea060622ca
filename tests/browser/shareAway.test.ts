import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openChromium } from './chromium';
import { openFolderSite } from './folderSite';

/** A name that only this browser resolves: to it the page comes over plain http from another machine. */
const CLUB_NAME = 'club.test';
let browser: Browser;
let site: Awaited<ReturnType<typeof openFolderSite>>;

beforeAll(async () => {
  site = await openFolderSite('share-site');
  browser = await openChromium([`--host-resolver-rules=MAP ${CLUB_NAME} 127.0.0.1`]);
});

afterAll(async () => {
  await browser?.close();
  await site?.cut();
});

test('over a club’s plain http the page says what is missing, copies by selection, and a link plays all the same', async () => {
  const page = await browser.newPage({ viewport: { width: 390, height: 844 }, locale: 'en-US' });
  await page.goto(`${site.url.replace('127.0.0.1', CLUB_NAME)}#/share`);
  expect(await page.evaluate(() => isSecureContext)).toBe(false);
  await page.locator('.plain-http').waitFor();
  expect(await page.locator('.share-only-here').count()).toBe(0);
  await page.getByRole('button', { name: 'Copy the link' }).click();
  await page.getByText('Selected: copy it with Ctrl C').waitFor();
  const link = await page.getByRole('textbox', { name: 'Link' }).inputValue();
  expect(link).toContain(`//${CLUB_NAME}:`);
  await page.goto(link);
  await page.getByRole('button', { name: 'Start', exact: true }).click();
  await page.locator('.map-window canvas').waitFor({ timeout: 90_000 });
  await page.goto(`${site.url.replace('127.0.0.1', CLUB_NAME)}#/club`);
  await page.locator('.club .plain-http').waitFor();
  await page.close();
});

test('a link made in one profile plays in another that had the program once and now has no network', async () => {
  const [one, other] = await Promise.all([1, 2].map(() => browser.newContext({ locale: 'en-US', serviceWorkers: 'allow' })));
  const teacher = await one!.newPage();
  await teacher.goto(`${site.url}#/share`);
  const link = await teacher.getByRole('textbox', { name: 'Link' }).inputValue();
  const words = await teacher.locator('.share-words').textContent();
  const phone = await other!.newPage();
  await phone.goto(site.url);
  await phone.locator('.version-build').waitFor({ timeout: 60_000 }); // by then all of it is kept
  await phone.close();
  await site.cut();
  await other!.setOffline(true);
  const later = await other!.newPage();
  await later.goto(link);
  await later.locator('.share-words').waitFor();
  expect(await later.locator('.share-words').textContent()).toBe(words);
  await later.getByRole('button', { name: 'Start', exact: true }).click();
  await later.locator('.map-window canvas').waitFor({ timeout: 90_000 });
});
