import { readdirSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { smallField } from '../core/club/smallField';
import { openChromium } from './chromium';
import { openFolderSite } from './folderSite';

const NAME = 'endless-site';
const PART = /^reading\.worker.*\.js$/;
let browser: Browser;
let site: Awaited<ReturnType<typeof openFolderSite>>;

beforeAll(async () => {
  [site, browser] = await Promise.all([openFolderSite(NAME), openChromium()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.cut();
});

test('a reading that never ends is ended after 1 s and 250 ms for the megabyte, told with its mend, and the page answers meanwhile', async () => {
  const part = readdirSync(`node_modules/.cache/${NAME}/assets`).find((file) => PART.test(file))!;
  site.change(`assets/${part}`, () => `addEventListener('message', () => { postMessage({ kind: 'begun' }); for (;;); });`);
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
