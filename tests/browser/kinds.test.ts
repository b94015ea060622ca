import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { openExercise } from '../../src/core/run/exercise';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { playerAt } from './player';

let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;
let page: Page;

const plain = JSON.parse(readFileSync('tests/browser/short-walk.json', 'utf8'));
const [startE, startN] = plain.start.at as [number, number];
const tagAt = (name: string, at: readonly [number, number], frequencyMHz: number) => ({ ...plain.tags[0], name, at, frequencyMHz });

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

async function opened(exercise: object): Promise<ReturnType<typeof playerAt>> {
  const context = await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US' });
  page = await context.newPage();
  await page.goto(site.url);
  const player = playerAt(page);
  await player.openExercise({ name: 'kind.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(exercise)) });
  return player;
}

const noFaults = async () => {
  const { violations } = await new AxeBuilder({ page: page as never }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
};

test('where one tag is asked for it is named, and "here" at another is told as another tag and does not end the run', async () => {
  const tags = [tagAt('Ewe', [startE, startN], 150.1), tagAt('Ram', [startE + 200, startN + 200], 151.24)];
  const player = await opened({ ...plain, tags, task: { kind: 'find', tag: 1 } });
  expect(await page.locator('.task-line').first().textContent()).toBe('Find Ram, 151.2400 MHz. A find at another tag does not count.');
  await player.press('n');
  expect(await page.locator('.tag-line', { hasText: 'asked for' }).locator('.tag-mhz').textContent()).toBe('151.2400 MHz');
  await noFaults();
  await player.press('f');
  await page.getByRole('button', { name: 'Another tag' }).waitFor();
  expect(await page.locator('.map-window').count()).toBe(1);
});

test('a fix from stations is shown, declared by the next press, and the debrief says how far it was off', async () => {
  const player = await opened({ ...plain, task: { kind: 'fix' } });
  await player.turnTo(40);
  await player.press('m');
  await player.press('f');
  const slip = page.getByRole('complementary', { name: 'Fix' });
  await slip.waitFor();
  expect(await page.getByRole('button', { name: 'Declare this fix' }).count()).toBe(0);
  await player.press('f'); // one bearing is no fix: nothing ends
  await player.hold('d', 6_000);
  await player.turnTo(340);
  await player.press('m');
  await page.getByRole('button', { name: 'Declare this fix' }).waitFor();
  await noFaults();
  await page.getByRole('button', { name: 'Declare this fix' }).click();
  await page.getByRole('button', { name: 'Skip', exact: true }).click({ timeout: 60_000 });
  const outcome = page.getByRole('region', { name: 'Outcome' });
  expect(await outcome.locator('div', { hasText: 'Fix off by' }).locator('dd').textContent()).toMatch(/^\d+ m$/);
  expect(await outcome.locator('div', { hasText: 'Tag in its area' }).locator('dd').textContent()).toMatch(/^(yes|no)$/);
});

test('where the map shows nobody, one sets the own place oneself and the way since is counted; a fix is made of such lines', async () => {
  const player = await opened({ ...plain, aids: { ...plain.aids, ownPosition: false } });
  const since = page.locator('.kind-note');
  await since.waitFor();
  expect(await since.textContent()).toBe('walked since 0 m');
  await player.hold('d', 3_000);
  expect(await since.textContent()).toMatch(/^walked since [1-9]\d* m$/);
  await player.press('o');
  await page.getByRole('button', { name: 'Tap the map' }).waitFor();
  await noFaults();
  await player.press('Enter');
  await page.getByRole('button', { name: 'I am here' }).waitFor();
  await page.locator('.kind-note', { hasText: 'walked since 0 m' }).waitFor();
  await player.press('m');
  await page.getByRole('button', { name: 'Fix', exact: true }).click();
  await page.getByRole('complementary', { name: 'Fix' }).waitFor();
});

test('a tap on a map that shows nobody sets off and does not stop at the place, which would give the own place away', async () => {
  const player = await opened({ ...plain, aids: { ...plain.aids, ownPosition: false } });
  const map = (await page.locator('.map-window').boundingBox())!;
  await page.mouse.click(map.x + map.width / 2 + 8, map.y + map.height / 2);
  await player.wait(6_000);
  expect(await page.locator('.walk-go').textContent()).toMatch(/^Stop/);
});

test('the vehicle is driven along the track, the long antenna is not carried from it, and the short one is taken up there', async () => {
  const kit = { ...plain.kit, antennas: ['yagi5', 'yagi3'], startAntenna: 'yagi5' };
  const { world } = openExercise(plain);
  const way = world.tracks[0]!.points.find((_, i, all) => i > all.length / 2)!;
  const start = { at: [Math.round(way.eM), Math.round(way.nM)], facingDeg: 0 };
  const player = await opened({ ...plain, kit, start, limits: { ...plain.limits, vehicle: true } });
  await player.hold('d', 7_000);
  await page.getByText('This antenna stays here').waitFor();
  await noFaults();
  await player.press('1');
  await page.getByRole('button', { name: 'Get out of the vehicle' }).waitFor();
  const map = (await page.locator('.map-window').boundingBox())!;
  await page.mouse.click(map.x + map.width / 2, map.y + 40);
  await player.wait(4_000);
  expect(await page.locator('.bar-walked').textContent()).toMatch(/^Walked (\d|1\d) m$/); // driven is not walked
  await player.press('1');
  await player.press('p');
  await page.getByRole('button', { name: /Three-element/ }).click();
  await page.getByRole('button', { name: 'Go on', exact: true }).last().click();
  await page.getByText('changing the antenna').waitFor();
});

test('a roof is climbed with its caution in sight, takes its time, and is come down from', async () => {
  const tower = { at: [startE, startN - 16], lengthM: 8, widthM: 8, alongDeg: 0, heightM: 3, walls: 'stone', climb: true };
  const player = await opened({ ...plain, ground: { ...plain.ground, buildings: [tower] }, cautions: ['heights', 'hearing'] });
  await page.locator('.kind-note', { hasText: 'a fall costs more than any find' }).waitFor();
  await player.press('2');
  await page.locator('.walk-blocked', { hasText: /^climbing, \d+ s$/ }).waitFor();
  await page.getByText('Up here the antenna is higher').waitFor();
  await noFaults();
  await page.locator('.walk-blocked', { hasText: 'climbing' }).waitFor({ state: 'detached', timeout: 60_000 });
  await page.getByRole('button', { name: 'Come down 3 m' }).click();
  await page.getByRole('button', { name: 'Climb 3 m' }).waitFor();
});
