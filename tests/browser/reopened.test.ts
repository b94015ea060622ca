import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { COUNT_CANVASES, HELD_CANVASES } from './countedCanvases';

let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

// What 200 openings leave is measured by tests/bench/mapScreen.ts; a few are enough to see that one opening leaves nothing.
test('an exercise that was opened and left leaves no picture and no part of its page behind', async () => {
  const context = await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US' });
  await context.addInitScript(COUNT_CANVASES);
  const page = await context.newPage();
  const troubles: string[] = [];
  page.on('pageerror', ({ message }) => troubles.push(message));
  await page.goto(site.url);
  const devtools = await context.newCDPSession(page);
  await devtools.send('HeapProfiler.enable');
  const openAndLeave = async (times: number) => {
    for (let i = 0; i < times; i++) {
      await page.evaluate('location.hash = "/ground/the-lookout"');
      await page.locator('.map-window canvas').waitFor({ timeout: 60_000 });
      await page.evaluate('location.hash = "/"');
      await page.locator('.map-window canvas').waitFor({ state: 'detached' });
    }
    for (let i = 0; i < 3; i++) {
      await page.waitForTimeout(300);
      await devtools.send('HeapProfiler.collectGarbage');
    }
    const { nodes } = await devtools.send('Memory.getDOMCounters');
    return { nodes, canvases: Number(await page.evaluate(HELD_CANVASES)) };
  };
  const before = await openAndLeave(3);
  const after = await openAndLeave(6);
  expect(after.canvases - before.canvases).toBeLessThanOrEqual(0);
  expect(after.nodes - before.nodes).toBeLessThan(60); // one screen of an exercise has hundreds
  expect(troubles).toEqual([]);
  await context.close();
});
