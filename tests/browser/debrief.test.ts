import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { cli } from '../cli/runCli';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { EAR_AT_LOUDSPEAKER, loudestBeep } from './loudspeaker';

const RUN = 'node_modules/.cache/debrief-run.json';
const EXERCISE = 'node_modules/.cache/debrief-exercise.json';
let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;
let page: Page;
const troubles: string[] = [];

beforeAll(async () => {
  const exercise = JSON.parse(readFileSync('tests/browser/short-walk.json', 'utf8')) as object;
  writeFileSync(EXERCISE, JSON.stringify({ ...exercise, companion: 'afterwards' }));
  cli(['walk', EXERCISE, '--as', 'loud-handed-20', '--out', RUN, '--json']);
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  const context = await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US' });
  await context.addInitScript(EAR_AT_LOUDSPEAKER);
  page = await context.newPage();
  page.on('pageerror', ({ message }) => troubles.push(message));
  await page.goto(site.url);
  await page.locator('input[aria-label="Run file"]').setInputFiles(RUN);
  await page.locator('.technique-score').waitFor({ timeout: 120_000 });
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
  for (const file of [RUN, EXERCISE]) rmSync(file, { force: true });
});

const slider = () => page.getByRole('slider', { name: 'Time in the run' });
const atS = async () => Number(await slider().getAttribute('aria-valuenow'));

test('the first screen answers what to do differently: a sentence, five habits and the map lie in the window', async () => {
  expect((await page.locator('.debrief-sentence').textContent())!.length).toBeGreaterThan(20);
  expect(await page.locator('.habit-score').count()).toBe(5);
  for (const part of ['.debrief-sentence', '.habits', '.run-map', '.scrubber']) {
    const { y, height } = (await page.locator(part).boundingBox())!;
    expect(y).toBeGreaterThanOrEqual(0);
    expect(y + height).toBeLessThanOrEqual(768);
  }
});

test('sentence and five habits stand above the scrubber on a phone either way up and on a projector, and nothing runs off a narrowed window', async () => {
  for (const [width, height, footPx] of [
    [1920, 1080, 64],
    [390, 844, 92],
    [844, 390, 58],
  ] as const) {
    await page.setViewportSize({ width, height });
    await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth), { timeout: 15_000 }).toBeLessThanOrEqual(width);
    const { y, height: tall } = (await page.locator('.habits').boundingBox())!;
    expect(y + tall).toBeLessThanOrEqual(height - footPx);
    const cut = await page.locator('.habit-moment').evaluateAll((all) => all.filter((one) => one.scrollWidth > one.clientWidth).length);
    expect(cut).toBe(0);
  }
  await page.setViewportSize({ width: 1366, height: 768 });
});

test('the scrubber goes by keys: to the beginning, by seconds and minutes, and plays on', async () => {
  await slider().focus();
  await page.keyboard.press('Home');
  expect(await atS()).toBe(0);
  for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Shift+ArrowRight');
  expect(await atS()).toBe(13);
  await page.keyboard.press('Tab');
  await page.locator('.scrubber-play').focus();
  await page.keyboard.press('Enter');
  await expect.poll(atS, { timeout: 30_000 }).toBeGreaterThanOrEqual(15);
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Play from here, with sound' }).waitFor();
  const stoppedS = await atS();
  await page.evaluate(() => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))));
  expect(await atS()).toBe(stoppedS);
});

test('a moment takes the scrubber to its beginning, and says what to do next time', async () => {
  const moment = page.locator('.moment-line[aria-pressed]').first();
  const [minutes, seconds] = (await moment.locator('.moment-clock').textContent())!.split(':').map(Number);
  await moment.focus();
  await page.keyboard.press('Enter');
  expect(await atS()).toBe(minutes! * 60 + seconds!);
  expect((await page.locator('.moment-slip b').textContent())!.length).toBeGreaterThan(10);
  await page.keyboard.press('Escape');
  await page.locator('.moment-slip').waitFor({ state: 'detached' });
});

test('a moment opens the demonstration that lets it be heard again, its settings in the room', async () => {
  await page.locator('.moment-line[aria-pressed]').first().click();
  const link = page.locator('.moment-slip').getByRole('link', { name: 'Hear this again' });
  const title = (await link.textContent())!.replace('Hear this again: ', '');
  const asked = new URLSearchParams((await link.getAttribute('href'))!.split('?')[1]!);
  const opening = page.context().waitForEvent('page');
  await link.click();
  const room = await opening;
  await room.locator('.room-ring').waitFor({ timeout: 30_000 });
  expect(await room.locator('.room-title h1').textContent()).toBe(title);
  const slid = async (name: string) => (await room.getByRole('slider', { name, exact: true }).getAttribute('aria-valuenow'))!;
  expect(await slid('Antenna heading')).toBe(asked.get('headingDeg'));
  expect(await slid('Gain')).toBe(asked.get('gainDb')); // close in, so the gain itself goes along, not how much was too much
  expect(await slid('Distance')).toBe(asked.get('walkM'));
  await room.close();
  await page.keyboard.press('Escape');
});

test('layers open by key, are worked out with progress, and are told in a sentence', async () => {
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await page.keyboard.press('l');
  await page.getByRole('button', { name: 'Ground in view of the tag' }).click();
  await page
    .locator('.layer-key')
    .getByText(/line of sight from \d+ % of the ground/)
    .waitFor({ timeout: 60_000 });
  await page.getByRole('button', { name: 'Nothing', exact: true }).click();
  await page.keyboard.press('Escape');
  await page.locator('.layers').waitFor({ state: 'detached' });
});

test('charts have a table, bearings their waves, and axe finds no fault', async () => {
  await page.locator('.numbers-table summary').first().focus();
  await page.keyboard.press('Enter');
  expect(await page.locator('.numbers-table[open] tbody tr').count()).toBeGreaterThan(20);
  await page.locator('.rose-wave').first().waitFor({ timeout: 60_000 });
  const { violations } = await new AxeBuilder({ page: page as never }).analyze();
  expect(violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${String(target)}`))).toEqual([]);
  expect(troubles).toEqual([]);
});

/** Takes the scrubber to a time by a press on its groove, plays on from there, and listens at the loudspeaker. */
async function heardFrom(s: number): Promise<number> {
  const { x, y, width, height } = (await page.locator('.scrubber-groove').boundingBox())!;
  const endS = Number(await slider().getAttribute('aria-valuemax'));
  await page.mouse.click(x + (width * s) / endS, y + height / 2);
  await page.getByRole('button', { name: 'Play from here, with sound' }).click();
  const { db } = await loudestBeep(page);
  await page.getByRole('button', { name: 'Pause' }).click();
  return db;
}

test('the scrubber plays the beeps of its place: a loud moment leaves the page louder than a faint one, as the run file has them', async () => {
  const { heard } = JSON.parse(readFileSync(RUN, 'utf8')) as { readonly heard: readonly (readonly [number, number, number])[] };
  // The loudest of five beeps in a row: which of them is caught does not matter much.
  const levels = heard
    .slice(0, -5)
    .map(([ms], i) => ({ s: ms / 1_000 - 0.5, db: Math.max(...heard.slice(i, i + 5).map(([, , db]) => db)) }));
  const loud = levels.reduce((a, b) => (b.db > a.db ? b : a));
  const faint = levels.reduce((a, b) => (b.db < a.db ? b : a));
  expect(loud.db - faint.db).toBeGreaterThan(6);
  const [louder, fainter] = [await heardFrom(loud.s), await heardFrom(faint.s)];
  expect(louder - fainter).toBeGreaterThan(3);
});

test('a companion for afterwards is kept back until it is asked for, then stands beside the run', async () => {
  expect(await page.locator('.steady-table').count()).toBe(0);
  await page.getByRole('button', { name: 'Show the companion’s run' }).click();
  await page.locator('.steady-table').waitFor({ timeout: 120_000 });
});

test('an address of an exercise opens that exercise, also from a debrief and from within another one', async () => {
  await page.evaluate('location.hash = "/ground/four-on-the-tops"');
  await page.getByRole('heading', { name: 'Four on the tops' }).first().waitFor({ timeout: 60_000 });
  // The heading stands there while its ground is still being made: the next address comes in between.
  await page.evaluate('location.hash = "/ground/long-rigg-common"');
  await page.getByRole('heading', { name: 'Long Rigg Common' }).first().waitFor({ timeout: 60_000 });
  await page.locator('.map-window canvas').waitFor({ timeout: 60_000 });
  await page.evaluate('location.hash = "/ground/three-gates"');
  await page.getByRole('heading', { name: 'Three gates' }).first().waitFor({ timeout: 60_000 });
  await page.locator('.map-window canvas').waitFor({ timeout: 60_000 });
  expect(await page.getByText(/Four on the tops|Long Rigg Common/i).count()).toBe(0);
});
