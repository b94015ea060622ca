import { gzipSync } from 'node:zlib';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { heardRound } from '../../src/core/listening/air';
import { DEMONSTRATIONS } from '../../src/core/listening/catalogue';
import type { Demonstration } from '../../src/core/listening/demonstration';
import { changed } from '../../src/core/listening/demonstrationDials';
import type { Settings } from '../../src/core/listening/settings';
import { sampledBeep } from '../core/listening/sampledBeep';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';

/** All script of the room, its sound included, by gzip. */
const MOST_SCRIPT_BYTES = 120_000;

let browser: Browser;
let context: BrowserContext;
let site: Awaited<ReturnType<typeof openBuiltPage>>;
let page: Page;
const troubles: string[] = [];

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  context = await browser.newContext({ viewport: { width: 1280, height: 720 }, locale: 'en-US' });
});

beforeEach(async () => {
  page = await context.newPage();
  page.on('pageerror', ({ message }) => troubles.push(message));
  page.on('console', (line) => {
    if (line.type() === 'error') troubles.push(line.text());
  });
});

afterEach(async () => {
  await page.close();
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

const open = async (address: string): Promise<void> => {
  await page.goto('about:blank');
  await page.goto(`${site.url}#/listen/${address}`);
  await page.locator('.room-drawings figure').first().waitFor();
};

type Point = { readonly levelDb: number; readonly audible: boolean };
/** The ring as the page draws it: levels of every third degree, and whether they are heard. */
async function drawnRing(): Promise<readonly Point[]> {
  const text = (await page.locator('.room-ring').getAttribute('data-ring'))!;
  return text.split(' ').map((one) => ({ levelDb: Number.parseFloat(one), audible: !one.endsWith('-') || one === '-' }));
}
const computedRing = (demonstration: Demonstration, settings: Settings): readonly Point[] =>
  heardRound(demonstration.air(settings), settings).map(({ levelDb, audible }) => ({ levelDb: Number(levelDb.toFixed(1)), audible }));

const press = async (key: string, times = 1): Promise<void> => {
  for (let i = 0; i < times; i++) await page.keyboard.press(key);
  await page.waitForTimeout(60);
};
const accessFaults = async (): Promise<readonly string[]> => {
  const { violations } = await new AxeBuilder({ page: page as never }).analyze();
  return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${String(target)}`));
};

test('the room comes alone: no map engine, at most 120 kB of script with its sound', async () => {
  const scripts = new Map<string, number>();
  page.on('response', async (response) => {
    if (response.status() === 200 && /\.js$/.test(response.url())) scripts.set(response.url(), gzipSync(await response.body()).length);
  });
  await open('back-signal');
  await page.getByRole('button', { name: 'Start the sound' }).click();
  await page.waitForTimeout(1_500);
  const names = [...scripts.keys()].map((url) => url.slice(url.lastIndexOf('/') + 1));
  expect(names.some((name) => name.startsWith('output'))).toBe(true);
  expect(names.filter((name) => /mapScene|^main/.test(name))).toEqual([]);
  expect([...scripts.values()].reduce((sum, bytes) => sum + bytes, 0)).toBeLessThan(MOST_SCRIPT_BYTES);
});

test('back signal by keys alone: as loud behind at full gain, gone behind with less, in the ring and in rendered sound', async () => {
  const { start } = DEMONSTRATIONS[0]!;
  await open('back-signal?projector');
  await press('ArrowUp', 3);
  const loud = await drawnRing();
  expect(Math.abs(loud[0]!.levelDb - loud[60]!.levelDb)).toBeLessThan(1);
  expect(await page.locator('.room-says').textContent()).toContain('as loud behind');
  expect(sampledBeep(DEMONSTRATIONS[0]!, { gainDb: 90, headingDeg: 180 }).beepDb).toBeCloseTo(loud[60]!.levelDb, 1);

  await press('Shift+ArrowDown', 7);
  await press('ArrowDown', 4);
  const quiet = await drawnRing();
  expect(quiet).toEqual(computedRing(DEMONSTRATIONS[0]!, { ...start, gainDb: 12 }));
  expect([quiet[0]!.audible, quiet[60]!.audible]).toEqual([true, false]);
  expect(sampledBeep(DEMONSTRATIONS[0]!, { gainDb: 12, headingDeg: 180 }).beepDb).toBeLessThan(-55);
  await press('f');
  expect(await page.locator('.room-ring').getAttribute('data-audible')).toBe('false');
  expect(await page.locator('.room-ring').getAttribute('aria-valuetext')).toContain('nothing heard');
});

test('read again 100 m on: with less gain only true lines are drawn, with more the back lines beside them', async () => {
  await open('back-signal?gainDb=12');
  await press('w');
  expect(await page.locator('.room-drawings .picture-bearing').count()).toBe(2);
  expect(await page.locator('.room-drawings .picture-bearing-back').count()).toBe(0);
  await press('b');
  expect(await page.locator('.room-drawings .picture-bearing-back').count()).toBe(2);
});

test('a held key turns the antenna, letting it go stops it', async () => {
  await open('quiet-gain');
  const heading = async () => Number(await page.locator('.room-ring').getAttribute('aria-valuenow'));
  await page.keyboard.down('ArrowRight');
  await page.keyboard.down('ArrowRight');
  await page.waitForTimeout(700);
  await page.keyboard.up('ArrowRight');
  const stopped = await heading();
  expect(stopped).toBeGreaterThan(10);
  await page.waitForTimeout(200);
  expect(await heading()).toBe(stopped);
});

test.each(DEMONSTRATIONS.map((demonstration) => [demonstration.title, demonstration] as const))(
  '%s: B changes the sound as the core computes it, nothing scrolls on the projector, axe finds nothing',
  async (_title, demonstration) => {
    await open(`${demonstration.id}?projector`);
    await press('Shift');
    expect(await page.evaluate(() => [document.documentElement.scrollWidth, document.documentElement.scrollHeight])).toEqual([1280, 720]);
    expect(await drawnRing()).toEqual(computedRing(demonstration, demonstration.start));
    const names: string[] = [];
    for (let i = 0; i < 2; i++) {
      await press('b');
      const name = (await page.locator('.room-ways [aria-pressed="true"]').textContent())!;
      names.push(name);
      const way = demonstration.ways.find((one) => one.name === name)!;
      expect(await drawnRing()).toEqual(
        computedRing(demonstration, changed(demonstration, demonstration.start, allSets(demonstration, way.sets))),
      );
    }
    expect(new Set(names).size).toBe(2);
    expect(await accessFaults()).toEqual([]);
    await press('p');
    expect(await accessFaults()).toEqual([]);
  },
);

/** What stands after a way was chosen: ways set the same controls, so the last one holds. */
const allSets = ({ ways }: Demonstration, sets: Partial<Settings>): Partial<Settings> => ({ ...ways[0].sets, ...ways[1].sets, ...sets });

test('Page Down goes through all eleven and round to the first', async () => {
  await open('back-signal');
  const titles: string[] = [];
  for (let i = 0; i < DEMONSTRATIONS.length; i++) {
    titles.push((await page.locator('.room-title h1').textContent())!);
    await press('PageDown');
  }
  expect(titles).toEqual(DEMONSTRATIONS.map(({ title }) => title));
  expect(await page.locator('.room-title h1').textContent()).toBe('Back signal');
});

test('the address follows the controls, and brings them back in another window', async () => {
  await open('on-the-note');
  await press('.', 4);
  await press('c');
  await page.waitForTimeout(400);
  const address = page.url();
  expect(address).toContain('on-the-note?offsetHz=200&choice=1');
  const before = await drawnRing();
  await open(address.slice(address.indexOf('#/listen/') + 9));
  expect(await drawnRing()).toEqual(before);
});

test('the instructor’s window shows the talking points and drives the room; the room does not show them', async () => {
  await open('axis');
  const notes = await context.newPage();
  await notes.goto(`${site.url}#/listen/notes`);
  await notes.getByRole('heading', { name: 'Axis' }).waitFor();
  expect(await notes.locator('.notes-points li').count()).toBeGreaterThan(2);
  const before = await page.locator('.room-gain-value').textContent();
  await notes.keyboard.press('ArrowDown');
  await page.waitForFunction((text) => document.querySelector('.room-gain-value')!.textContent !== text, before);
  await notes.keyboard.press('PageDown');
  await notes.getByRole('heading', { name: DEMONSTRATIONS[3]!.title }).waitFor();
  for (const point of DEMONSTRATIONS[3]!.talkingPoints) expect(await page.getByText(point).count()).toBe(0);
  await notes.close();
});

test('a check by ear: three questions answered by keys, the ring covered meanwhile', async () => {
  await open('back-signal');
  await press('k');
  for (let i = 1; i <= 3; i++) {
    expect(await page.locator('.room-covered').isVisible()).toBe(true);
    expect(await page.locator('.ear-check-count').textContent()).toContain(`${i} of 3`);
    await press('1');
    expect(await page.locator('.ear-check-verdict').textContent()).toMatch(/Right\.|No:/);
    if (i === 1) expect(await accessFaults()).toEqual([]);
    await page.locator('.ear-check-deeds .primary').click();
  }
  expect(await page.locator('.room-covered').count()).toBe(0);
});

test.each(['A4', 'Letter'] as const)('on %s the handout is one page with four rings', async (format) => {
  for (const { id } of DEMONSTRATIONS) {
    await open(id);
    // What stands on the sheet as it goes to print: this listener comes after the room's own.
    await page.evaluate(() => {
      const seen = () =>
        document.body.setAttribute(
          'data-printed-paths',
          [...document.querySelectorAll('.handout-rings svg')].map((svg) => svg.querySelectorAll('path').length).join(),
        );
      addEventListener('beforeprint', seen, { once: true });
    });
    const pdf = (await page.pdf({ format, printBackground: true })).toString('latin1');
    expect([id, await page.locator('body').getAttribute('data-printed-paths')]).toEqual([
      id,
      expect.stringMatching(/^[1-9]\d*(,[1-9]\d*){3}$/),
    ]);
    expect([id, [...pdf.matchAll(/\/Type\s*\/Page\b/g)].length]).toEqual([id, 1]);
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    expect(await page.locator('.handout-rings svg').count()).toBe(4);
    expect(await page.locator('.handout').isVisible()).toBe(false);
  }
});

test.each([
  [390, 844],
  [844, 390],
  [667, 375],
])('on a phone of %i by %i nothing lies beyond the edge, and ring and gain stand together above the fold', async (width, height) => {
  const phone = await browser.newPage({ viewport: { width, height }, locale: 'en-US', hasTouch: true, isMobile: true });
  for (const { id } of DEMONSTRATIONS) {
    await phone.goto('about:blank');
    await phone.goto(`${site.url}#/listen/${id}`);
    await phone.locator('.room-ring').waitFor();
    expect(await phone.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
    for (const part of ['.room-ring', '.room-gain']) {
      const box = (await phone.locator(part).boundingBox())!;
      expect(box.y + box.height).toBeLessThan(height);
    }
  }
  await phone.close();
});

test('nothing went wrong on the way', () => {
  expect(troubles).toEqual([]);
});
