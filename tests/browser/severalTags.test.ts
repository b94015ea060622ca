import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { EAR_AT_LOUDSPEAKER } from './loudspeaker';
import { playerAt } from './player';

let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;
let page: Page;

const plain = JSON.parse(readFileSync('tests/browser/short-walk.json', 'utf8'));
const tag = (name: string, frequencyMHz: number, pulsesPerMinute: number) => ({
  ...plain.tags[0],
  name,
  frequencyMHz,
  pulsesPerMinute,
  pulseMs: 60,
});
const exercise = { ...plain, tags: [tag('Ewe', 150.1, 120), tag('Ram', 150.1006, 113), tag('Lamb', 150.125, 120)] };

/** Level of some notes within the last 0.68 s, dB re full scale. */
const notesDb = (notesHz: readonly number[]): Promise<readonly number[]> =>
  page.evaluate((wanted) => {
    const ear = (window as unknown as { ear: AnalyserNode }).ear;
    const samples = new Float32Array(ear.fftSize);
    ear.getFloatTimeDomainData(samples);
    return wanted.map((hz) => {
      let [re, im] = [0, 0];
      samples.forEach((sample, i) => {
        re += sample * Math.cos((2 * Math.PI * hz * i) / 48_000);
        im += sample * Math.sin((2 * Math.PI * hz * i) / 48_000);
      });
      return 20 * Math.log10((2 / samples.length) * Math.hypot(re, im) + 1e-9);
    });
  }, notesHz);

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  const context = await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US' });
  page = await context.newPage();
  await page.addInitScript(EAR_AT_LOUDSPEAKER);
  await page.goto(site.url);
  await playerAt(page).openExercise({
    name: 'three-tags.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(exercise)),
  });
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

test('tags are listed with their frequencies, one key opens the list, and it can be reached without a mouse', async () => {
  await page.keyboard.press('n');
  const list = page.getByRole('complementary', { name: 'Tags' });
  expect(await list.locator('.tag-mhz').allTextContents()).toEqual(['150.1000 MHz', '150.1006 MHz', '150.1250 MHz']);
  expect(await list.locator('[aria-current]').textContent()).toContain('Ewe');
  const { violations } = await new AxeBuilder({ page: page as never }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
});

test('two neighbours beep together at 1 000 and 1 600 Hz; the dial moves them, and the far tag is found by it alone', async () => {
  const player = playerAt(page);
  await player.gainTo(45);
  await player.turnTo(45);
  await player.wait(1_200);
  const [ewe, ram, between] = (await notesDb([1_000, 1_600, 1_300])) as [number, number, number];
  expect(Math.min(ewe, ram)).toBeGreaterThan(between + 10);

  await page.getByRole('button', { name: 'Tune near Lamb' }).press('Enter');
  await player.wait(300);
  expect(await page.locator('.tuning-mhz').textContent()).toBe('150.1235');
  expect(await page.locator('.tag-line[aria-current]').textContent()).toContain('Lamb');
  await player.wait(1_200);
  const [lamb, gone] = (await notesDb([1_500, 1_000])) as [number, number];
  expect(lamb).toBeGreaterThan(gone + 15);
  for (let i = 0; i < 10; i++) await player.press('.'); // 50 Hz each, up to the clearest note
  await player.wait(1_500);
  const [clearest, before] = (await notesDb([1_000, 1_500])) as [number, number];
  expect(clearest).toBeGreaterThan(before + 15);
  expect(await page.locator('.tuning-number').first().textContent()).toBe('1000 Hz');
});
