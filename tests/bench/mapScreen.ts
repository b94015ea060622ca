import type { Browser, CDPSession, Page } from 'playwright-core';
import { openBuiltPage } from '../browser/builtPage';
import { openChromium } from '../browser/chromium';
import { COUNT_CANVASES, HELD_CANVASES } from '../browser/countedCanvases';
import { playerAt } from '../browser/player';
import type { Figure } from './figure';
import { type TraceEvent, workPerFrameMs } from './frameWork';

const EXERCISE = 'tests/browser/short-walk.json';
/** By then fonts, modules and the fields of the exercise are held, which stay. */
const WARM = 20;
const RESTARTS = 200;
const WALK_MS = 30_000;

/** The screen of an exercise: what is left of it after it was opened and closed again and again, and what one frame of it costs. */
export async function figures(): Promise<readonly Figure[]> {
  const [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  try {
    return [...(await growth(browser, site.url)), ...(await frames(browser, site.url))];
  } finally {
    await browser.close();
    await site.close();
  }
}

async function pageAt(browser: Browser, url: string): Promise<{ readonly page: Page; readonly devtools: CDPSession }> {
  const context = await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US' });
  await context.addInitScript(COUNT_CANVASES);
  const page = await context.newPage();
  await page.goto(url);
  return { page, devtools: await context.newCDPSession(page) };
}

async function growth(browser: Browser, url: string): Promise<readonly Figure[]> {
  const { page, devtools } = await pageAt(browser, url);
  const restart = async () => {
    await page.evaluate('location.hash = "/ground/the-lookout"');
    await page.locator('.map-window canvas').waitFor();
    await page.evaluate('location.hash = "/"');
    await page.locator('.map-window canvas').waitFor({ state: 'detached' });
  };
  const held = async () => {
    // Twice, with a rest: what a finaliser lets go is collected only the next time.
    for (let i = 0; i < 2; i++) {
      await page.waitForTimeout(1_000);
      await devtools.send('HeapProfiler.collectGarbage');
    }
    const { usedSize } = await devtools.send('Runtime.getHeapUsage');
    const canvases = Number(await page.evaluate(HELD_CANVASES));
    const { nodes } = await devtools.send('Memory.getDOMCounters');
    return { heapMb: usedSize / 1e6, canvases, nodes };
  };
  await devtools.send('HeapProfiler.enable');
  for (let i = 0; i < WARM; i++) await restart();
  const before = await held();
  for (let i = 0; i < RESTARTS; i++) await restart();
  const after = await held();
  await page.context().close();
  const name = (what: string) => `${what} more after ${RESTARTS} openings of the map`;
  return [
    { name: name('heap'), unit: 'MB', value: after.heapMb - before.heapMb, goal: 2 },
    { name: name('canvases'), unit: '', value: after.canvases - before.canvases, goal: 0 },
    { name: name('page nodes'), unit: '', value: after.nodes - before.nodes, goal: 0 },
  ];
}

/** Walking, turning and changing the gain for half a minute, with the sound on. */
async function frames(browser: Browser, url: string): Promise<readonly Figure[]> {
  const { page } = await pageAt(browser, url);
  const player = playerAt(page);
  await player.openExercise(EXERCISE);
  await player.wait(3_000);
  await browser.startTracing(page, { categories: ['disabled-by-default-devtools.timeline', 'devtools.timeline', 'toplevel'] });
  const until = Date.now() + WALK_MS;
  await page.keyboard.down('w');
  while (Date.now() < until) {
    await player.hold('ArrowRight', 1_500);
    await player.hold('ArrowLeft', 700);
    await player.press('ArrowUp');
    await player.press('ArrowDown');
  }
  await page.keyboard.up('w');
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString()) as { readonly traceEvents: readonly TraceEvent[] };
  await page.context().close();
  const at = (share: number, works: readonly number[]) => [...works].sort((a, b) => a - b)[Math.floor(share * works.length)]!;
  const [work, elapsed] = [workPerFrameMs(traceEvents, 'processor'), workPerFrameMs(traceEvents, 'elapsed')];
  return [
    { name: 'main-thread work per frame, median', unit: 'ms', value: at(0.5, work), goal: 4 },
    { name: 'main-thread work per frame, 99 of 100', unit: 'ms', value: at(0.99, work), goal: 4 },
    { name: 'the same with its waits, 99 of 100', unit: 'ms', value: at(0.99, elapsed), goal: 4 },
  ];
}
