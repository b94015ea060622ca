import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { EAR_AT_LOUDSPEAKER, loudestBeep } from './loudspeaker';

let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;
let page: Page;

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  page = await browser.newPage({ viewport: { width: 1280, height: 720 }, locale: 'en-US' });
  await page.addInitScript(EAR_AT_LOUDSPEAKER);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** Opens a demonstration and gives the gesture; what is measured from then on left the page's own loudspeaker. */
async function open(address: string): Promise<void> {
  await page.goto('about:blank');
  await page.goto(`${site.url}#/listen/${address}`);
  await page.locator('.room-gate').click();
  await page.locator('.room-drawings figure').first().waitFor();
}
const press = async (key: string, times = 1): Promise<void> => {
  for (let i = 0; i < times; i++) await page.keyboard.press(key);
};
/** Level of the beep now, and after some keys, dB. */
const levels = async (...changes: readonly (readonly [key: string, times?: number])[]): Promise<readonly number[]> => {
  const heard = [(await loudestBeep(page)).db];
  for (const [key, times] of changes) {
    await press(key, times);
    heard.push((await loudestBeep(page)).db);
  }
  return heard;
};

test('back signal: at full gain facing about changes less than 1 dB at the loudspeaker; at 12 dB it takes more than 10 dB away', async () => {
  await open('back-signal');
  await press('ArrowUp', 3);
  const [front, back] = await levels(['f']);
  expect(Math.abs(front! - back!)).toBeLessThan(1);
  await press('f');
  await press('Shift+ArrowDown', 7);
  await press('ArrowDown', 4);
  const [quietFront, quietBack] = await levels(['f']);
  expect(quietFront! - quietBack!).toBeGreaterThan(10);
  expect(front! - quietFront!).toBeGreaterThan(30);
});

test('quiet gain: 60 degrees aside change less than 1 dB loud and more than 2 dB quiet', async () => {
  await open('quiet-gain');
  const [loud, loudAside] = await levels(['ArrowRight', 20]);
  expect(Math.abs(loud! - loudAside!)).toBeLessThan(1);
  await press('b');
  const [aside, ahead] = await levels(['ArrowLeft', 20]);
  expect(ahead! - aside!).toBeGreaterThan(2);
});

test('axis: turned flat against an upright whip the beep loses 20 dB, within 1.5 dB', async () => {
  await open('axis');
  const [upright, flat] = await levels(['r']);
  expect(Math.abs(upright! - flat! - 20)).toBeLessThan(1.5);
});

test('bounce: with the hillside taken away its side falls by more than 10 dB', async () => {
  await open('bounce?walkM=100&headingDeg=225');
  const [shining, taken] = await levels(['c']);
  expect(shining! - taken!).toBeGreaterThan(10);
});

test('wires: back to them, the transmitter’s side is more than 10 dB louder than across', async () => {
  await open('wires');
  await press('b');
  const [across, near] = await levels(['b']);
  expect(near! - across!).toBeGreaterThan(10);
});

test('a step aside brings back more than 20 dB', async () => {
  await open('a-step-aside');
  const [faded, aside] = await levels(['b']);
  expect(aside! - faded!).toBeGreaterThan(20);
});

test('clear view: the crest is more than 20 dB louder than the hollow', async () => {
  await open('clear-view?gainDb=24');
  const [hollow, crest] = await levels(['b']);
  expect(crest! - hollow!).toBeGreaterThan(20);
});

test('close in: facing about changes less than 1 dB by gain alone and more than 10 dB with 30 dB of attenuator', async () => {
  await open('close-in');
  const [front, back] = await levels(['f']);
  expect(Math.abs(front! - back!)).toBeLessThan(1);
  await press(']', 3);
  const [attenuatedBack, attenuatedFront] = await levels(['f']);
  expect(attenuatedFront! - attenuatedBack!).toBeGreaterThan(10);
});

test('on the note: 1 kHz of dial doubles the pitch; 2.5 kHz take more than 25 dB', async () => {
  await open('on-the-note?gainDb=60');
  const first = await loudestBeep(page);
  await press('.', 20);
  const second = await loudestBeep(page);
  expect(second.crossings / first.crossings).toBeGreaterThan(1.8);
  expect(second.crossings / first.crossings).toBeLessThan(2.2);
  await press('.', 40);
  expect(first.db - (await loudestBeep(page)).db).toBeGreaterThan(25);
});

test('how far: twice the distance in view is 12 dB softer, within 1.5 dB', async () => {
  await open('how-far?walkM=1000');
  const [near, far] = await levels(['w', 10]);
  expect(Math.abs(near! - far! - 12)).toBeLessThan(1.5);
});

test('crossing bearings: at the last station 45 degrees, where the transmitter lies, are more than 1.5 dB louder than 0 and 90', async () => {
  await open('crossing-bearings');
  const [before, on, beyond] = await levels(['ArrowRight', 15], ['ArrowRight', 15]);
  expect(on! - before!).toBeGreaterThan(1.5);
  expect(on! - beyond!).toBeGreaterThan(1.5);
});
