import { AxeBuilder } from '@axe-core/playwright';
import jsQR from 'jsqr';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { QR_BYTES } from '../../src/core/scenario/link';
import { plainScenario } from '../core/world/fixtureScenario';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';

let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;
let context: BrowserContext;
let page: Page;
const troubles: string[] = [];

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  context = await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US', acceptDownloads: true });
  context.setDefaultTimeout(90_000);
  page = await context.newPage();
  page.on('pageerror', ({ message }) => troubles.push(message));
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

const faults = async (on: Page) => {
  const { violations } = await new AxeBuilder({ page: on as never }).analyze();
  return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${String(target)}`));
};

/** What a phone would read from the picture of the whole window. */
async function readFromScreen(on: Page): Promise<string | undefined> {
  const { data, width, height } = PNG.sync.read(await on.screenshot());
  return jsQR(new Uint8ClampedArray(data), width, height)?.data;
}

test('the code on the screen is the link, within 800 bytes, and in another profile it plays the same exercise', async () => {
  await page.goto(site.url);
  await page.getByRole('button', { name: 'Share an exercise' }).click();
  await page
    .getByRole('button', { name: /^Two ridges/ })
    .first()
    .click();
  const title = 'Two ridges';
  await page.locator('.share-ways').getByRole('heading', { name: title }).waitFor();
  const words = (await page.locator('.share-words').textContent())!;
  expect(words.split(' ')).toHaveLength(4);
  const link = (await readFromScreen(page))!;
  expect(link).toBe(await page.getByRole('textbox', { name: 'Link' }).inputValue());
  expect(link.length).toBeLessThanOrEqual(QR_BYTES);
  expect(link.startsWith(`${site.url}#/exercise/d1.`)).toBe(true);
  expect(await faults(page)).toEqual([]);

  const other = await (await browser.newContext({ viewport: { width: 390, height: 844 }, locale: 'en-US' })).newPage();
  await other.goto(link);
  await other.getByRole('heading', { name: title }).waitFor();
  expect(await other.locator('.share-words').textContent()).toBe(words);
  expect(await faults(other)).toEqual([]);
  await other.keyboard.press('Tab'); // the first stop is Start
  await other.keyboard.press('Enter');
  await other.locator('.map-window canvas').waitFor({ timeout: 60_000 });
  await other.context().close();
});

test('an exercise too full for a code says so and leaves link and file', async () => {
  const buildings = Array.from({ length: 40 }, (_, i) => ({
    at: [((i * 617) % 2_000) + 137, ((i * 911) % 1_900) + 211] as [number, number],
    lengthM: 10 + (i % 17),
    widthM: 8 + (i % 5),
    heightM: 4 + (i % 7),
    alongDeg: (i * 37) % 180,
    walls: 'stone' as const,
  }));
  const full = plainScenario({ title: 'Forty barns', ground: { buildings } });
  const file = { name: 'forty.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(full)) };
  await page.goto(`${site.url}#/share`);
  await page.locator('input[aria-label="Exercise file"]').setInputFiles(file);
  await page.getByRole('heading', { name: 'Forty barns' }).waitFor();
  const said = (await page.locator('.share-no-code').textContent())!;
  const link = await page.getByRole('textbox', { name: 'Link' }).inputValue();
  expect(link.length).toBeGreaterThan(QR_BYTES);
  expect(said).toContain(`${link.length.toLocaleString('en-GB')} of 800 bytes`);
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the file' }).click();
  expect((await saving).suggestedFilename()).toBe('forty-barns.json');
});

test.each([
  ['another alphabet', 'd1.%C3%A9%C3%A9', 'letters that no exercise is packed in'],
  ['nothing', '', 'no exercise that this version can unpack'],
])('a link with %s is told with its mend, not opened', async (_what, packed, says) => {
  await page.goto(`${site.url}#/exercise/${packed}`);
  const told = page.getByRole('alert');
  await told.getByText(says).waitFor();
  expect(await told.textContent()).toContain('Mend: ');
  await page.getByRole('button', { name: 'Start page' }).click();
  await page.getByRole('heading', { name: 'Exercises', exact: true }).waitFor();
});

test('where the share sheet takes no .json the file goes as text, and over plain http the page says what is missing', async () => {
  const phone = await browser.newPage({ viewport: { width: 390, height: 844 } });
  await phone.addInitScript(() => {
    const sent: string[] = [];
    Object.defineProperty(window, 'isSecureContext', { value: false });
    Object.assign(window, { sent });
    Object.assign(navigator, {
      canShare: ({ files }: { files: File[] }) => files.every(({ type }) => type === 'text/plain'),
      share: async ({ files, url }: { files?: File[]; url?: string }) =>
        sent.push(files ? `${files[0]!.name} ${(await files[0]!.text()).slice(0, 1)}` : url!),
    });
  });
  await phone.goto(`${site.url}#/share`);
  await phone.locator('.plain-http').waitFor();
  const title = (await phone.locator('.share-ways h2').textContent())!;
  await phone.getByRole('button', { name: 'Send the file …' }).click();
  await phone.getByRole('button', { name: 'Send the link …' }).click();
  const sent = await phone.evaluate(() => (window as never as { sent: string[] }).sent);
  expect(sent[0]).toBe(`${title.toLowerCase().replaceAll(' ', '-')}.json.txt {`);
  expect(sent[1]).toBe(await phone.getByRole('textbox', { name: 'Link' }).inputValue());
  const small = await phone.evaluate(() =>
    [...document.querySelectorAll('button')].filter((one) => one.offsetHeight < 44 || one.offsetWidth < 44).map((one) => one.textContent),
  );
  expect(small).toEqual([]);
  expect(await phone.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
  await phone.close();
  expect(troubles).toEqual([]);
});
