import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { clubReport } from '../../src/core/club/clubReport';
import { collectedTable, makeCollector } from '../../src/core/club/collect';
import { csvOf } from '../../src/core/club/csv';
import { geojsonOf } from '../../src/core/club/geojson';
import { gpxOf } from '../../src/core/club/gpx';
import { pageOf } from '../../src/core/club/page';
import { statementsOf } from '../../src/core/club/statements';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { clubRuns, tampered } from './clubRuns';

const FOLDER = 'node_modules/.cache/club-runs';
let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;
let page: Page;
let paths: readonly string[];
const troubles: string[] = [];

beforeAll(async () => {
  const runs = clubRuns().map((run, i) => (i === 2 ? tampered(run) : run));
  mkdirSync(FOLDER, { recursive: true });
  paths = runs.map(({ name, text }) => {
    writeFileSync(`${FOLDER}/${name}`, text);
    return `${FOLDER}/${name}`;
  });
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  page = await browser.newPage({ viewport: { width: 1366, height: 768 }, locale: 'en-US', acceptDownloads: true });
  page.on('pageerror', ({ message }) => troubles.push(message));
  await page.goto(site.url);
  await page.getByRole('button', { name: 'Club table' }).click();
  await page.getByRole('heading', { name: 'Club table' }).waitFor();
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
  rmSync(FOLDER, { recursive: true, force: true });
});

const lines = () => page.locator('.club-ranking tbody tr');
const lineOf = (name: string) => lines().filter({ has: page.locator('.club-name').getByText(name, { exact: true }) });
const downloaded = async (press: string | RegExp, on = page): Promise<string> => {
  const saving = on.waitForEvent('download');
  await on.getByRole('button', { name: press }).click();
  return readFileSync((await (await saving).path())!, 'utf8');
};

test('six dropped files are checked two at a time: four with places, one changed and told how, one aided', async () => {
  const dropped = paths.map((path) => ({ name: path.split('/').at(-1)!, text: readFileSync(path, 'utf8') }));
  await page.evaluate((files) => {
    const data = new DataTransfer();
    for (const { name, text } of files) data.items.add(new File([text], name, { type: 'application/json' }));
    dispatchEvent(new DragEvent('dragover', { dataTransfer: data, cancelable: true }));
    dispatchEvent(new DragEvent('drop', { dataTransfer: data, cancelable: true }));
  }, dropped);
  await page.getByText('6 of 6 files checked').waitFor({ timeout: 60_000 });
  expect(await lines().count()).toBe(5);
  const changed = (await lineOf('Alder').textContent())!;
  expect(changed).toContain('does not replay');
  expect(changed).toContain('its seal is broken');
  expect(changed).toContain('The file says technique 99');
  expect(await lineOf('Alder').locator('.club-place').textContent()).toBe('–');
  expect(await lineOf('Hazel').textContent()).toContain('checked, aided');
  expect(await lineOf('Rowan').locator('.club-place').textContent()).toBe('1');
  expect(await lines().first().locator('.club-name').textContent()).toBe('Rowan');
  expect(await page.locator('.club-teach').textContent()).toMatch(/^(Teach next|No habit)/);
});

test('every export gives the bytes that the same functions give outside the browser', async () => {
  const collect = makeCollector();
  const all = paths.map((path) => collect(path, JSON.parse(readFileSync(path, 'utf8'))));
  const report = clubReport(collectedTable(all).table);
  for (const [press, written] of [
    [/^CSV/, csvOf(report)],
    [/^GPX/, gpxOf(report)],
    [/^GeoJSON/, `${JSON.stringify(geojsonOf(report))}\n`],
    [/^xAPI/, `${JSON.stringify(statementsOf(report))}\n`],
    [/^Page/, pageOf(report)],
  ] as const) {
    expect(await downloaded(press), String(press)).toBe(written);
  }
});

test('the saved table goes on in another profile with the runs of another evening, and tells who was there when', async () => {
  const other = await browser.newPage({ viewport: { width: 1366, height: 768 }, acceptDownloads: true });
  await other.goto(`${site.url}#/club`);
  const buffer = Buffer.from(await downloaded('Save the table'));
  const chooser = other.locator('input[aria-label="Run files and saved tables"]');
  await chooser.setInputFiles({ name: 'club-table.json', mimeType: 'application/json', buffer });
  await other.getByText('1 of 1 files checked').waitFor();
  await other.locator('.club-taken').getByText('table of 6 runs').waitFor({ state: 'attached' });
  await chooser.setInputFiles(paths[0]!); // again: nothing may be twice
  await other.getByText('2 of 2 files checked').waitFor({ timeout: 30_000 });
  expect(await other.locator('.club-head').textContent()).toContain('6 runs of 2 exercises');
  const rowan = other.locator('.club-season tbody tr').filter({ hasText: 'Rowan' });
  expect(await rowan.locator('.club-there').allTextContents()).toEqual(['there', 'there']);
  const hazel = other.locator('.club-season tbody tr').filter({ hasText: 'Hazel' });
  expect(await hazel.locator('.club-there').allTextContents()).toEqual(['there', 'not there']);
  await other.close();
});

test('by keys: order by outcome, names to the front, the clock through all runs and playing', async () => {
  await page.getByRole('button', { name: 'By outcome' }).focus();
  await page.keyboard.press('Enter');
  const places = (await lines().locator('.club-place').allTextContents()).map((text) => Number.parseInt(text, 10));
  const taken = places.filter((place) => !Number.isNaN(place));
  expect(taken).toEqual([...taken].sort((a, b) => a - b));
  expect(places.slice(taken.length).every(Number.isNaN)).toBe(true);
  await lineOf('=Sorrel').getByRole('button', { name: '=Sorrel', exact: true }).focus();
  await page.keyboard.press('Enter');
  expect(await page.locator('.club-front').textContent()).toContain('=Sorrel');
  const clock = page.getByRole('slider', { name: 'Time since each began' });
  await clock.focus();
  await page.keyboard.press('Home');
  expect(await clock.getAttribute('aria-valuenow')).toBe('0');
  await page.keyboard.press('PageUp');
  expect(await clock.getAttribute('aria-valuenow')).toBe('10');
  await page.getByRole('button', { name: 'Play together' }).focus();
  await page.keyboard.press('Enter');
  await page.waitForFunction(() => Number(document.querySelector('.club-clock [role="slider"]')!.getAttribute('aria-valuenow')) > 40);
  await page.getByRole('button', { name: 'Pause' }).click();
  await page.getByRole('button', { name: 'By technique' }).click();
});

test('without names no name and no file name is left on the screen or in an export', async () => {
  await page.getByRole('button', { name: 'Without names' }).click();
  const seen = (await page.locator('.club').textContent())!;
  for (const name of ['Rowan', 'Hazel', 'Alder', 'Bryony', 'Sorrel', 'loud-handed']) expect(seen).not.toContain(name);
  expect(await lines().first().textContent()).toMatch(/Tracker [A-E]/);
  expect(await downloaded(/^CSV/)).not.toContain('Rowan');
  await page.getByRole('button', { name: 'Show names' }).click();
});

test('the debrief of a run opens from its line, and going back finds the table as it was', async () => {
  await page.getByRole('button', { name: 'Debrief of Rowan' }).click();
  await page.locator('.technique-score').waitFor({ timeout: 60_000 });
  await page.goBack();
  expect(await lines().count()).toBe(5);
});

test('axe finds no fault, a phone has nothing beside its window and nothing too small for a finger, and both papers take it', async () => {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  const phone = await context.newPage();
  await phone.goto(`${site.url}#/club`);
  await phone.locator('input[aria-label="Run files and saved tables"]').setInputFiles([...paths]);
  await phone.getByText('6 of 6 files checked').waitFor({ timeout: 60_000 });
  const { violations } = await new AxeBuilder({ page: phone as never }).analyze();
  expect(violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${String(target)}`))).toEqual([]);
  expect(await phone.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
  const small = await phone.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('.club button')].filter((one) => one.offsetHeight < 42).map((one) => one.textContent),
  );
  expect(small).toEqual([]);
  for (const format of ['A4', 'Letter'] as const) expect((await phone.pdf({ format })).length).toBeGreaterThan(10_000);
  const cautions = phone.getByText('never go near a fallen one');
  expect(await cautions.isVisible()).toBe(false);
  await phone.emulateMedia({ media: 'print' });
  expect(await cautions.isVisible()).toBe(true);
  await context.close();
  expect(troubles).toEqual([]);
});

test('the page to print has on both papers the table of the first exercise and its tracks on one sheet', async () => {
  const sheet = await browser.newPage();
  await sheet.setContent(await downloaded(/^Page/));
  await sheet.emulateMedia({ media: 'print' });
  for (const [widthMm, heightMm] of [
    [210, 297],
    [216, 279],
  ] as const) {
    const px = (mm: number) => Math.floor(((mm - 28) / 25.4) * 96); // less two margins of 14 mm
    await sheet.setViewportSize({ width: px(widthMm), height: px(heightMm) });
    const drawnTo = await sheet
      .locator('figure')
      .first()
      .evaluate((figure) => figure.getBoundingClientRect().bottom + scrollY);
    expect(drawnTo).toBeLessThan(px(heightMm));
  }
  await sheet.close();
});
