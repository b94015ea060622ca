import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openChromium } from './chromium';
import { openFolderSite } from './folderSite';
import { playerAt } from './player';

let browser: Browser;
let context: BrowserContext;
let page: Page;
let site: Awaited<ReturnType<typeof openFolderSite>>;

beforeAll(async () => {
  [site, browser] = await Promise.all([openFolderSite('offline-site'), openChromium()]);
  context = await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US', serviceWorkers: 'allow' });
  page = await context.newPage();
  await page.goto(site.url);
});

afterAll(async () => {
  await browser?.close();
  await site?.cut();
});

const build = () => page.locator('.version-build').textContent({ timeout: 30_000 });

test('the page can be installed: manifest and icons are there, in a folder below the root of a plain file server', async () => {
  const address = await page.locator('link[rel=manifest]').evaluate((link) => (link as HTMLLinkElement).href);
  const manifest = await page.evaluate(async (of) => (await fetch(of)).json(), address);
  expect(manifest.display).toBe('standalone');
  const sizes = await page.evaluate(
    (icons) =>
      Promise.all(
        icons.map(async (src) => {
          const image = new Image();
          image.src = src;
          await image.decode();
          return image.naturalWidth;
        }),
      ),
    (manifest.icons as { src: string }[]).map(({ src }) => new URL(src, address).href),
  );
  expect(sizes).toEqual([192, 512, 512]);
});

test('with the network cut and the server gone it starts cold and an exercise opens on the ground, workers and map engine included', async () => {
  expect(await build()).toMatch(/^[0-9a-f]{8}$/);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null); // the page of the first visit too
  await page.close();
  await site.cut();
  await context.setOffline(true);
  page = await context.newPage();
  await page.goto(site.url);
  await playerAt(page).openExercise('tests/browser/short-walk.json');
  await page.goto(`${site.url}licences.html`);
  await page.getByRole('heading', { name: 'Third-party licences' }).waitFor();
  await context.setOffline(false);
  await site.mend();
});

test('a newer version waits until it is let in: the run goes on meanwhile and is offered again afterwards', async () => {
  await page.goto(`${site.url}#/`);
  const player = playerAt(page);
  await player.openExercise('tests/browser/short-walk.json');
  site.change('index.html', (text) => text.replace('<title>', '<title>Newer '));
  site.change('offline.js', (text) => text.replace(/KEPT_VERSION = "\w+"/, 'KEPT_VERSION = "00000002"'));
  await page.evaluate(async () => {
    const registration = (await navigator.serviceWorker.getRegistration())!;
    await registration.update();
    while (!registration.waiting) await new Promise((done) => setTimeout(done, 50));
  });
  await player.press(' ');
  await player.wait(4_500);
  expect(await page.title()).not.toContain('Newer');
  await page.evaluate(() => {
    location.hash = '/';
  });
  await page.getByRole('button', { name: 'Open the newer version' }).click();
  await page.waitForFunction(() => document.title.includes('Newer'));
  await page.getByRole('button', { name: /Go on with Short walk/ }).waitFor();
  expect(await build()).toBe('00000002');
});
