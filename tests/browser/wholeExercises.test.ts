import { readFileSync } from 'node:fs';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { readRecording } from '../../src/core/run/record';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { playerAt } from './player';

/** The tag lies 57 m off at 45 degrees; "here" counts within 25 m. Keys, gamepad and screen reader have their walks in other files. */
const plain = JSON.parse(readFileSync('tests/browser/short-walk.json', 'utf8'));
const EXERCISE = {
  name: 'near.json',
  mimeType: 'application/json',
  buffer: Buffer.from(JSON.stringify({ ...plain, tags: [{ ...plain.tags[0], at: [490, 490] }] })),
};
const ENOUGH_M = 42;
let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;
let page: Page;

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
});

afterEach(async () => {
  await page?.context().close();
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

async function opened(options: BrowserContextOptions, before?: string): Promise<void> {
  const context = await browser.newContext({ locale: 'en-US', acceptDownloads: true, ...options });
  page = await context.newPage();
  if (before) await page.addInitScript(before);
  await page.goto(site.url);
  await playerAt(page).openExercise(EXERCISE);
}

const button = (name: string | RegExp) => page.getByRole('button', { name });
const isWalked = (m: number) =>
  page.waitForFunction(
    (least) => Number.parseFloat(document.querySelector('.bar-walked')!.textContent!.replace(/[^0-9.]/g, '')) >= least,
    m,
    { timeout: 120_000 },
  );
const isOver = () => page.getByRole('heading', { name: 'How did it go?' }).waitFor({ timeout: 20_000 });
/** Once the hand's deed has come into its tick. */
const settled = () => page.waitForTimeout(200);
const offBearing = async () => Math.abs((((await playerAt(page).headingDeg()) - 45 + 540) % 360) - 180);

/** By the bar of the map's scale. */
const pxPerM = () =>
  page.locator('.map-scale').evaluate((scale) => {
    const said = /(\d+) m/.exec(scale.textContent!)!;
    return scale.querySelector('.map-scale-bar')!.getBoundingClientRect().width / Number(said[1]);
  });

/** Where on the dial a bearing lies, in pixels of the page. */
async function onDial(deg: number, share: number): Promise<{ readonly x: number; readonly y: number }> {
  const box = (await page.locator('.dial').boundingBox())!;
  const radius = (share * Math.min(box.width, box.height)) / 2;
  const turn = (deg * Math.PI) / 180;
  return { x: box.x + box.width / 2 + radius * Math.sin(turn), y: box.y + box.height / 2 - radius * Math.cos(turn) };
}

/** Where on the gain slider so many decibels lie, whether it lies or stands. */
async function onGain(db: number): Promise<{ readonly x: number; readonly y: number }> {
  const box = (await page.getByRole('slider', { name: 'Gain' }).locator('.slide-groove').boundingBox())!;
  return box.width > box.height
    ? { x: box.x + (box.width * db) / 90, y: box.y + box.height / 2 }
    : { x: box.x + box.width / 2, y: box.y + box.height * (1 - db / 90) };
}

test('a whole exercise goes by mouse alone: slider, dial drawn round, walk, mark, here', async () => {
  await opened({ viewport: { width: 1366, height: 768 } });
  const gain = await onGain(26);
  await page.mouse.click(gain.x, gain.y);
  await settled();
  expect(Math.abs(Number(await page.locator('.gain-number').textContent()) - 26)).toBeLessThanOrEqual(1);
  for (const deg of [300, 330, 0, 20, 45]) {
    const { x, y } = await onDial(deg, 0.6);
    if (deg === 300) {
      await page.mouse.move(x, y);
      await page.mouse.down();
    } else await page.mouse.move(x, y, { steps: 6 });
  }
  await page.mouse.up();
  await settled();
  expect(await offBearing()).toBeLessThanOrEqual(3);
  await button('Mark bearing').click();
  await button(/^Pace/).click();
  await button('Walk ahead').click();
  await isWalked(ENOUGH_M);
  await button(/^Stop/).click();
  await button('Declare find').click();
  await isOver();
});

test('a whole exercise goes by one finger, the phone held upright and then on its side, and a tap on the map walks there', async () => {
  await opened({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  await button('Put the task away').tap();
  const gain = await onGain(26);
  await page.touchscreen.tap(gain.x, gain.y);
  const ahead = await onDial(45, 0.6);
  await page.touchscreen.tap(ahead.x, ahead.y);
  await settled();
  expect(await offBearing()).toBeLessThanOrEqual(4);
  await button('Mark bearing').tap();
  await page.setViewportSize({ width: 844, height: 390 });
  await button('Walk ahead').tap();
  await isWalked(8);
  await button(/^Stop/).tap();
  await page.setViewportSize({ width: 390, height: 844 });
  await button('Centre on me').tap();
  await settled();
  const map = (await page.locator('.map-window').boundingBox())!;
  const leftM =
    57 - (await page.evaluate(() => Number.parseFloat(document.querySelector('.bar-walked')!.textContent!.replace(/[^0-9.]/g, ''))));
  const alongPx = (leftM / Math.SQRT2) * (await pxPerM());
  await page.touchscreen.tap(map.x + map.width / 2 + alongPx, map.y + map.height / 2 - alongPx);
  await button(/^Stop/).waitFor();
  await button('Walk ahead').waitFor({ timeout: 120_000 }); // there it stops by itself
  await button('Declare find').tap();
  await isOver();
});

test('a whole exercise goes with the phone as the antenna, turned in the hand', async () => {
  await opened(
    { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
    `DeviceOrientationEvent.requestPermission = () => Promise.resolve('granted');`,
  );
  const turned = (deg: number) =>
    page.evaluate(
      (alpha) => dispatchEvent(new DeviceOrientationEvent('deviceorientationabsolute', { absolute: true, alpha, beta: 0, gamma: 0 })),
      (360 - deg) % 360,
    );
  await button('Put the task away').tap();
  await button('Turn the antenna with the phone').tap();
  await turned(0);
  await button('The phone points to the map’s north now').tap();
  for (let deg = 0; deg <= 90; deg += 5) await turned(deg); // past it and back, as a hand sweeps
  for (let deg = 90; deg >= 45; deg -= 5) await turned(deg);
  await page.waitForTimeout(200);
  expect(await offBearing()).toBeLessThanOrEqual(1);
  await button('Mark bearing').tap();
  await button(/^Pace/).tap();
  await button('Walk ahead').tap();
  await isWalked(ENOUGH_M);
  await button(/^Stop/).tap();
  await button('Declare find').tap();
  await isOver();
});

test('a whole exercise goes with the sound off, by words and level bar alone, and the result says that it was aided', async () => {
  await opened({ viewport: { width: 1366, height: 768 } });
  const player = playerAt(page);
  await button('Sound off').click();
  await player.press('p');
  await page.getByRole('group', { name: 'Captions and level bar' }).getByRole('button', { name: 'On' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Go on', exact: true }).click();
  await player.gainTo(20);
  /** What the bar shows: the longest of a few beeps on a heading. */
  const level = async (): Promise<number> => {
    let longest = 0;
    for (let looks = 0; looks < 9; looks++) {
      longest = Math.max(
        longest,
        await page.locator('.caption-level span').evaluate((bar) => Number.parseFloat((bar as HTMLElement).style.width)),
      );
      await player.wait(100);
    }
    return longest;
  };
  const heard: (readonly [deg: number, level: number])[] = [];
  for (const deg of [320, 45, 135, 225]) {
    await player.turnTo(deg);
    await player.wait(900); // the beep of the heading before has gone
    heard.push([await player.headingDeg(), await level()]);
  }
  const [loudest] = heard.reduce((best, one) => (one[1] > best[1] ? one : best));
  expect(Math.abs(((loudest - 45 + 540) % 360) - 180)).toBeLessThanOrEqual(20);
  await player.turnTo(45);
  await player.press('m');
  await player.press(' ');
  await isWalked(ENOUGH_M);
  await player.press(' ');
  await player.press('f');
  await isOver();
  await button('See the grade').click();
  await page.locator('.technique-score').waitFor({ timeout: 60_000 });
  expect(await page.locator('.outcome').textContent()).toContain('captions on');
  const saving = page.waitForEvent('download');
  await button('Save run file').click();
  expect(readRecording('saved run', readFileSync((await (await saving).path())!, 'utf8')).aided).toBe(true);
});
