import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { undoOf } from '../../src/browser/ground/undoNotebook';
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

/** What the live region of the accessibility tree says; nothing else of the page is read. */
const saidMatching = async (page: Page, wanted: RegExp): Promise<string> => {
  const region = page.getByRole('status', { name: 'What changed' });
  for (let tries = 0; tries < 100; tries++) {
    const words = /- status "What changed":? ?(.*)/.exec(await region.ariaSnapshot())?.[1] ?? '';
    if (wanted.test(words)) return words;
    await page.waitForTimeout(60);
  }
  throw new Error(`never said ${wanted}, but ${await region.ariaSnapshot()}`);
};

test('an exercise goes by keyboard to the find with nothing but what the accessibility tree says', async () => {
  const page = await browser.newPage({ viewport: { width: 1366, height: 768 }, locale: 'en-US' });
  await page.goto(site.url);
  const player = playerAt(page);
  await player.openExercise('tests/browser/short-walk.json');
  await player.press('ArrowDown');
  await saidMatching(page, /gain \d+/);
  await player.press('r');
  await saidMatching(page, /antenna upright/);
  const heading = async () => Number(/Antenna (\d+)°/.exec(await asked(page))![1]);
  for (let tries = 0; tries < 30; tries++) {
    const offDeg = ((45 - (await heading()) + 540) % 360) - 180;
    if (Math.abs(offDeg) <= 3) break;
    await player.hold(offDeg > 0 ? 'ArrowRight' : 'ArrowLeft', Math.max(20, (Math.abs(offDeg) / 45) * 800));
  }
  await player.press('m');
  await saidMatching(page, /bearing 1 marked, 04\d°/);
  await player.press('u');
  await saidMatching(page, /bearing 1 struck out/);
  await player.press('u');
  await saidMatching(page, /bearing 1 restored/);
  for (let i = 0; i < 3; i++) await player.press('x');
  await player.press(' ');
  await saidMatching(page, /walking north-east/);
  for (let tries = 0; tries < 400; tries++) {
    const walkedM = Number(/Walked (\d+) metres/.exec(await asked(page))![1]);
    if (walkedM >= 92) break;
    await player.wait(100);
  }
  await player.press(' ');
  await saidMatching(page, /standing/);
  await player.press('f');
  await page.getByRole('heading', { name: 'How did it go?' }).waitFor({ timeout: 20_000 });
  await page.close();
});

async function asked(page: Page): Promise<string> {
  await page.keyboard.press('q');
  return saidMatching(page, /You stand \d+ metres (east|west) and \d+ metres (north|south) of the start/);
}

test('undo takes back the last mark, strike or pin, and nothing where nothing was written', () => {
  expect(undoOf([])).toBeNull();
  const [mark, pin] = [{ type: 'mark' } as const, { type: 'guess', at: { eM: 1, nM: 2 } } as const];
  const logOf = (...actions: Parameters<typeof undoOf>[0][number]['action'][]) => actions.map((action) => ({ tick: 0, action }));
  expect(undoOf(logOf(mark, mark))).toEqual({ type: 'strikeOut', mark: 1 });
  expect(undoOf(logOf(mark, { type: 'strikeOut', mark: 0 }))).toEqual({ type: 'unstrike', mark: 0 });
  expect(undoOf(logOf(mark, pin))).toEqual({ type: 'guess', at: null });
  expect(undoOf(logOf(pin, { type: 'guess', at: null }))).toEqual(pin);
});
