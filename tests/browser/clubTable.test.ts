import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { clubReport } from '../../src/core/club/clubReport';
import { tableDocument } from '../../src/core/club/tableDocument';
import type { ClubTable } from '../../src/core/club/tableRow';
import { digestOf } from '../../src/core/scenario/seal';
import { FELL, handmadeRow } from '../core/club/handmadeTable';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { clubRuns } from './clubRuns';
import { storedIn } from './stored';

let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;
let context: BrowserContext;
let page: Page;
const troubles: string[] = [];

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

const asFile = (name: string, text: string) => ({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
const tableFile = (table: ClubTable) => asFile('club-table.json', JSON.stringify(tableDocument(table, clubReport(table), [], false)));

/** A profile of its own, with the club's page open. */
async function freshProfile(): Promise<void> {
  await context?.close();
  context = await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US' });
  page = await context.newPage();
  page.on('pageerror', ({ message }) => troubles.push(message));
  await page.goto(`${site.url}#/club`);
}
const give = (...files: ReturnType<typeof asFile>[]) => page.locator('input[aria-label="Run files and saved tables"]').setInputFiles(files);
const said = (text: string) => page.locator('.club-files [role="status"]').getByText(text).waitFor({ timeout: 60_000 });
const cellsOf = async (table: string, cell: string) =>
  (await page.locator(`${table} tbody ${cell}`).allTextContents()).map((text) => text.trim());

const MOOR = { ...FELL, digest: digestOf('moor'), title: 'Long moor', seed: 'long-moor' };
const practice = { daysPractised: 8, longestGapDays: 5, dueShare: 1, largestSkillShare: 0.5 };
const TWO_EVENINGS: ClubTable = {
  exercises: [FELL, MOOR],
  rows: [
    handmadeRow('Rowan', { technique: 80, practice }),
    handmadeRow('Hazel', { technique: 80 }),
    handmadeRow('Ash', { technique: 61.2, outcome: { timeS: 500 } }),
    handmadeRow('Sorrel', {
      technique: null,
      habits: { quietGain: null, setThenSweep: null },
      outcome: { found: false, ending: 'gave-up' },
    }),
    handmadeRow('Rowan', { exercise: MOOR.digest, begunAt: '2026-05-19T19:30:00+02:00', technique: 80 }),
  ],
};

test('who is equal shares a place with a mark, and who shows too little has a dash and is told why, in either order', async () => {
  await freshProfile();
  await give(tableFile(TWO_EVENINGS));
  await said('1 of 1 files checked');
  const names = () => cellsOf('.club-ranking', '.club-name');
  const places = () => cellsOf('.club-ranking', '.club-place');
  expect(await names()).toEqual(['Hazel', 'Rowan', 'Ash', 'Sorrel']);
  expect(await places()).toEqual(['1=', '1=', '3', '–']);
  const sorrel = page.locator('.club-ranking tbody tr').nth(3);
  expect(await sorrel.locator('.club-why').first().textContent()).toBe('fewer than three habits shown');
  expect((await sorrel.locator('td.number').allTextContents()).map((text) => text.trim())).toEqual(['–', '–', '–', '–', '85', '–']);
  await page.getByRole('button', { name: 'By outcome' }).click();
  expect(await names()).toEqual(['Ash', 'Hazel', 'Rowan', 'Sorrel']);
  expect(await places()).toEqual(['1', '2=', '2=', '–']);
});

test('over both evenings: shared places, who was there when, few runs, and the fifth habit as stated', async () => {
  expect(await cellsOf('.club-season', '.club-place')).toEqual(['1=', '1=', '3', '–']);
  const rows = page.locator('.club-season tbody tr');
  const attendance = async (name: string) => rows.filter({ hasText: name }).locator('.club-there').allTextContents();
  expect(await attendance('Rowan')).toEqual(['there', 'there']);
  expect(await attendance('Hazel')).toEqual(['there', 'not there']);
  const fifth = await rows.locator('td:last-child').allTextContents();
  expect(fifth).toEqual(['–', '100', '–', '–']);
  expect(await rows.first().textContent()).toContain('few runs');
});

test('a table that was not saved is there again after a reload, without names as it was left; cleared, it is gone for good', async () => {
  await page.getByRole('button', { name: 'Without names' }).click();
  await page.locator('.club-away').getByText('Not saved yet: until then this browser alone keeps it').waitFor();
  await inStore('unsaved, without names');
  await page.reload();
  await said('1 of 1 files checked');
  expect(await page.locator('.club-head').textContent()).toContain('5 runs of 2 exercises');
  for (const name of ['Rowan', 'Hazel', 'Sorrel']) expect(await page.locator('.club').textContent()).not.toContain(name);
  await page.getByRole('button', { name: 'Show names' }).click();
  expect(await cellsOf('.club-ranking', '.club-place')).toEqual(['1=', '1=', '3', '–']);
  const { violations } = await new AxeBuilder({ page: page as never }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  await page.getByRole('button', { name: 'Clear' }).click();
  await inStore('nothing');
  await page.reload();
  await page.getByRole('button', { name: 'Choose run files' }).waitFor();
  expect(await page.locator('.club-ranking').count()).toBe(0);
});

test('a reload adds to the table of before, its ground stays known, and a saved table is not called unsaved', async () => {
  await freshProfile();
  const [rowan, hazel] = clubRuns();
  await give(asFile(rowan!.name, rowan!.text));
  await said('1 of 1 files checked');
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the table' }).click();
  await saving;
  await page.locator('.club-away').getByText('Saved.').waitFor();
  await inStore('saved, with names');
  await page.reload();
  await said('1 of 1 files checked');
  expect(await page.locator('.club-away').textContent()).toContain('Saved.');
  await page.locator('.club-map-frame').waitFor();
  expect(await page.locator('.club-map').textContent()).not.toContain('has no ground');
  await give(asFile(hazel!.name, hazel!.text));
  await said('2 of 2 files checked');
  expect((await cellsOf('.club-ranking', '.club-name')).sort()).toEqual(['Hazel', 'Rowan']);
});

test('checking that is stopped keeps what was checked, tells the other files, and takes them when they are given again', async () => {
  await freshProfile();
  const runs = clubRuns().slice(0, 5);
  const pile = Array.from({ length: 40 }, (_, i) => asFile(`${i}-${runs[i % 5]!.name}`, runs[i % 5]!.text));
  await give(...pile);
  await page.waitForFunction(() => Number(document.querySelector('.club-progress')?.getAttribute('aria-valuenow') ?? 0) > 0);
  await page.getByRole('button', { name: 'Stop checking' }).click();
  await page.locator('.club-progress').waitFor({ state: 'detached' });
  const status = (await page.locator('.club-files [role="status"]').textContent())!;
  const lost = Number(/40 of 40 files checked, (\d+) not taken/.exec(status)?.[1]);
  expect(lost).toBeGreaterThan(0);
  expect(lost).toBeLessThan(40);
  const told = await page.locator('.club-taken li').filter({ hasText: 'stopped before it was checked. Mend: ' }).count();
  expect(told).toBe(lost);
  await give(...pile.slice(35));
  await said('45 of 45 files checked');
  expect(await page.locator('.club-ranking tbody tr').count()).toBe(5);
  expect(troubles).toEqual([]);
});

/** Waits until the browser's own store has the club's table in this way, or no longer. */
const inStore = (wanted: 'saved, with names' | 'unsaved, without names' | 'nothing') =>
  expect
    .poll(
      async () => {
        const [kept] = await storedIn<{ readonly anonymous: boolean; readonly unsaved: boolean }>(page, 'faintward-club', 'club');
        return kept ? `${kept.unsaved ? 'unsaved' : 'saved'}, ${kept.anonymous ? 'without' : 'with'} names` : 'nothing';
      },
      { timeout: 30_000 },
    )
    .toBe(wanted);
