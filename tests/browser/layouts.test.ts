import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { playerAt } from './player';

let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

type Box = { readonly name: string; readonly x: number; readonly y: number; readonly width: number; readonly height: number };

/** Every control of the ground that can be seen, with its box. */
const controls = (page: Page): Promise<readonly Box[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('.ground button, .ground [role="slider"]')]
      .filter((element) => element.offsetParent !== null)
      .map((element) => {
        const { x, y, width, height } = element.getBoundingClientRect();
        return { name: element.getAttribute('aria-label') ?? element.textContent ?? '', x, y, width, height };
      }),
  );

const overlaps = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width - 1 && b.x < a.x + a.width - 1 && a.y < b.y + b.height - 1 && b.y < a.y + a.height - 1;

test.each([
  [390, 844],
  [844, 390],
  [1_280, 720],
  [1_366, 768],
  [1_920, 1_080],
])('at %i × %i every control lies whole inside the window, apart from the others and wide enough for a finger', async (width, height) => {
  const page = await browser.newPage({ viewport: { width, height }, locale: 'en-US' });
  await page.goto(site.url);
  const player = playerAt(page);
  await player.openExercise('tests/browser/short-walk.json');
  await page.getByRole('button', { name: 'Put the task away' }).click();
  await player.press('m');
  await player.wait(300);
  const boxes = await controls(page);
  expect(boxes.length).toBeGreaterThan(12);
  const outside = boxes.filter((box) => box.x < 0 || box.y < 0 || box.x + box.width > width + 0.5 || box.y + box.height > height + 0.5);
  expect(outside).toEqual([]);
  const small = boxes.filter((box) => Math.min(box.width, box.height) < 41.9);
  expect(small).toEqual([]);
  const crossed = boxes.flatMap((a, i) => boxes.slice(i + 1).flatMap((b) => (overlaps(a, b) ? [`${a.name} over ${b.name}`] : [])));
  expect(crossed).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollHeight <= window.innerHeight)).toBe(true);
  await page.close();
});

test('the person on the start page keeps head and antenna in the picture, phone on its side or projector', async () => {
  const page = await browser.newPage({ locale: 'en-US' });
  for (const [width, height] of [
    [844, 390],
    [390, 844],
    [1_366, 768],
    [1_920, 1_080],
  ] as const) {
    await page.setViewportSize({ width, height });
    await page.goto(site.url);
    expect((await page.locator('.hills-person').boundingBox())!.y).toBeGreaterThanOrEqual(0);
  }
  await page.close();
});
