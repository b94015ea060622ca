import { readdirSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { smallField } from '../core/club/smallField';
import { openChromium } from './chromium';
import { openFolderSite } from './folderSite';

const NAME = 'endless-site';
let browser: Browser;
let site: Awaited<ReturnType<typeof openFolderSite>>;

beforeAll(async () => {
  [site, browser] = await Promise.all([openFolderSite(NAME), openChromium()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.cut();
});

/** The worker of a name begins to read and never comes to an end. */
function neverEnding(name: RegExp): void {
  const part = readdirSync(`node_modules/.cache/${NAME}/assets`).find((file) => name.test(file))!;
  site.change(`assets/${part}`, () => `addEventListener('message', () => { postMessage({ kind: 'begun' }); for (;;); });`);
}

test('a reading that never ends is ended after 1 s and 250 ms for the megabyte, told with its mend, and the page answers meanwhile', async () => {
  neverEnding(/^reading\.worker.*\.js$/);
  const page = await browser.newPage();
  const workers = () => page.workers().length;
  await page.goto(site.url);
  await page.getByRole('heading', { name: 'Faintward' }).waitFor();
  await page.getByLabel('Exercise file', { exact: true }).setInputFiles({
    name: 'own.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(smallField('x', [640, 610], 60))),
  });
  await expect.poll(workers).toBe(1);
  await page.getByRole('button', { name: 'Night', exact: true }).click();
  const told = page.locator('.own-file').getByRole('alert');
  await told.getByText('takes more than 1250 ms to read').waitFor();
  expect(await told.textContent()).toContain('Mend: give a smaller file');
  // A browser gives a loop some seconds before it cuts it off.
  await expect.poll(workers, { timeout: 20_000 }).toBe(0);
});

test('the same with an elevation file, which can also be stopped before', async () => {
  neverEnding(/^elevation\.worker.*\.js$/);
  const page = await browser.newPage();
  const workers = () => page.workers().filter((worker) => worker.url().includes('every')).length;
  await page.goto(`${site.url}#/desk`);
  await page.getByRole('button', { name: 'Begin from nothing' }).click();
  await page.getByRole('button', { name: 'Ground', exact: true }).click();
  await page.getByText('The map shows this ground.').waitFor({ timeout: 60_000 });
  const idle = workers();
  await page.getByRole('button', { name: 'Own ground from a file …' }).click();
  const give = (letters: number) =>
    page
      .getByLabel('Elevation file', { exact: true })
      .setInputFiles({ name: 'dale.asc', mimeType: 'text/plain', buffer: Buffer.alloc(letters, '7 ') });
  await give(2_500_000);
  await page.getByRole('progressbar', { name: 'File read' }).waitFor();
  await page.getByRole('button', { name: 'Stop reading' }).click();
  expect(await page.getByRole('progressbar', { name: 'File read' }).count()).toBe(0);
  await give(2_500_000);
  await page.getByRole('alert').getByText('takes more than 1750 ms to read').waitFor();
  await page.getByRole('button', { name: 'Kit' }).click();
  await expect.poll(workers, { timeout: 20_000 }).toBe(idle);
  await page.getByRole('button', { name: 'Ground', exact: true }).click();
  await page
    .getByLabel('Elevation file', { exact: true })
    .setInputFiles({ name: 'land.asc', mimeType: 'text/plain', buffer: Buffer.alloc(40_000_001, '7 ') });
  await page.getByRole('alert').getByText('40.0 MB, more than the 40 MB that are read').waitFor();
});
