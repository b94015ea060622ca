import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { EAR_AT_LOUDSPEAKER } from './loudspeaker';

let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

async function opened(address: string, options: BrowserContextOptions = {}, settings: object = {}): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 720 }, locale: 'en-US', ...options });
  const page = await context.newPage();
  await page.addInitScript(EAR_AT_LOUDSPEAKER);
  await page.addInitScript(`localStorage.setItem('faintward-settings', '${JSON.stringify(settings)}')`);
  await page.goto(`${site.url}#/listen/${address}`);
  await page.locator('.room-drawings figure').first().waitFor();
  return page;
}

const slid = async (page: Page, name: string): Promise<number> =>
  Number(await page.getByRole('slider', { name }).getAttribute('aria-valuenow'));

test('with the focus on the walk the arrows walk and turn nothing; on the gain they turn knob and antenna, Page Down the page', async () => {
  const page = await opened('how-far');
  const walk = page.locator('.room-dial-slide [role="slider"]').first();
  const name = (await walk.getAttribute('aria-label'))!;
  const [walked, gain, heading] = await Promise.all([name, 'Gain', 'Antenna heading'].map((one) => slid(page, one)));
  const step = async (key: string) => {
    await page.keyboard.press(key);
    await page.waitForTimeout(50);
    return slid(page, name);
  };
  await walk.focus();
  const right = await step('ArrowRight');
  expect(right).toBeGreaterThan(walked!);
  expect(await step('ArrowUp')).toBeGreaterThan(right);
  expect(await step('ArrowDown')).toBe(right);
  expect(await step('ArrowLeft')).toBe(walked);
  expect([await slid(page, 'Gain'), await slid(page, 'Antenna heading')]).toEqual([gain, heading]);

  await page.getByRole('slider', { name: 'Gain' }).focus();
  await step('ArrowUp');
  await step('ArrowRight');
  expect([await slid(page, 'Gain'), await slid(page, 'Antenna heading')]).toEqual([gain! + 2, heading! + 3]);
  expect(await slid(page, name)).toBe(walked);
  const title = await page.locator('.room-title h1').textContent();
  await page.keyboard.press('PageDown');
  await page.waitForFunction((was) => document.querySelector('.room-title h1')!.textContent !== was, title);
  await page.context().close();
});

test('with captions on, a caption says what sounds: loud in front, as loud behind; then one side only', async () => {
  const page = await opened('back-signal?gainDb=90', {}, { captions: true });
  await page.locator('.room-gate').click();
  const caption = page.locator('.room-caption');
  await page.waitForFunction(() => document.querySelector('.room-caption')!.textContent !== '');
  expect(await caption.textContent()).toContain('loud in front, as loud behind');
  expect((await caption.boundingBox())!.width).toBeGreaterThan(100);
  for (let i = 0; i < 39; i++) await page.keyboard.press('ArrowDown');
  await page.waitForFunction(() => document.querySelector('.room-caption')!.textContent!.includes('one side only'));
  await page.context().close();
});

test('where reduced motion is asked for nothing moves by itself, and the beep still goes on', async () => {
  const running = async (reducedMotion: 'reduce' | 'no-preference') => {
    const page = await opened('back-signal', { reducedMotion });
    await page.locator('.room-gate').click();
    const moving = new Set<string>();
    for (let i = 0; i < 12; i++) {
      const names = await page.evaluate(() => document.getAnimations().map((one) => one.constructor.name));
      for (const name of names) moving.add(name);
      await page.waitForTimeout(80);
    }
    const peak = await loudest(page);
    await page.context().close();
    return { moving: moving.size, peak };
  };
  const [calm, usual] = [await running('reduce'), await running('no-preference')];
  expect(calm.moving).toBe(0);
  expect(usual.moving).toBeGreaterThan(0);
  expect(calm.peak).toBeGreaterThan(0.001);
});

/** The largest sample that leaves the page within a second and a half: two beeps at least. */
async function loudest(page: Page): Promise<number> {
  let most = 0;
  for (let i = 0; i < 3; i++) {
    await page.waitForTimeout(500);
    const now = await page.evaluate(() => {
      const { ear } = window as unknown as { ear: AnalyserNode };
      const samples = new Float32Array(ear.fftSize);
      ear.getFloatTimeDomainData(samples);
      return samples.reduce((so, sample) => Math.max(so, Math.abs(sample)), 0);
    });
    most = Math.max(most, now);
  }
  return most;
}

test('close in at full gain the loudspeaker gets -13 dBFS at most to begin with, -1 dBFS at full volume', async () => {
  const page = await opened('close-in?gainDb=90&walkM=2', {}, { volumeDb: 0 }); // full volume was left behind last time
  await page.locator('.room-gate').click();
  const begun = await loudest(page);
  expect(begun).toBeGreaterThan(0.02);
  expect(begun).toBeLessThanOrEqual(10 ** (-13 / 20) + 1e-3);
  for (let i = 0; i < 12; i++) await page.keyboard.press('*');
  await page.waitForTimeout(800); // what sounded before is out of the window
  const full = await loudest(page);
  expect(full).toBeGreaterThan(2 * begun);
  expect(full).toBeLessThanOrEqual(10 ** (-1 / 20) + 1e-3);
  await page.context().close();
});
