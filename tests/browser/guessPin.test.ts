import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { refutationWords } from '../../src/browser/ground/pinNow';
import { ontoMap } from '../../src/browser/map/screenFrame';
import { readRecording } from '../../src/core/run/record';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { playerAt } from './player';

let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;
let page: Page;

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  page = await (await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US' })).newPage();
  await page.goto(site.url);
  await playerAt(page).openExercise('tests/browser/short-walk.json');
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

test('by keys: a pin in the map’s middle brings what would refute it, Escape puts it away, another pin brings it again', async () => {
  const player = playerAt(page);
  const note = page.getByRole('complementary', { name: 'Guess pin' });
  for (let i = 0; i < 3; i++) await player.press('i');
  await player.press('g');
  await player.press('Enter');
  await note.waitFor({ timeout: 10_000 });
  expect(await note.getByRole('status').textContent()).toMatch(
    /^If it lay there, you would hear it at gain \d+ on \d{3}° from (here|a place \d+ metres [a-z-]+), flat or upright\. Hear nothing there both ways, and it is wrong\.$/,
  );
  const { violations } = await new AxeBuilder({ page: page as never }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  await player.press('Escape');
  expect(await note.count()).toBe(0);
  await player.press('i');
  await player.press('g');
  await player.press('Enter');
  await note.waitFor({ timeout: 10_000 });
});

test('the sentence tells where to go, how high it lies, and when readings speak against the pin at once', () => {
  const listen = { kind: 'listen', from: { eM: 0, nM: 0 }, awayDeg: 2, headingDeg: 310, gainDb: 42 } as const;
  expect(refutationWords({ ...listen, awayM: 120, higherM: 20 })).toBe(
    'If it lay there, you would hear it at gain 42 on 310° from the higher ground 120 metres north, flat or upright. Hear nothing there both ways, and it is wrong.',
  );
  expect(refutationWords({ ...listen, awayM: 10, higherM: 0 })).toContain('310° from here');
  expect(refutationWords({ kind: 'too-far', bearing: 2, heardNetDb: 12, neededDb: 31 })).toContain('Bearing 2 was taken at gain 12');
  expect(refutationWords({ kind: 'too-far', bearing: 2, heardNetDb: 12, neededDb: 91 })).toContain('more than there is');
  expect(refutationWords({ kind: 'out-of-view' })).toContain('Walk closer');
});

test('a press on the paper beyond the map means the map’s edge, so that no run keeps a place that its file may not hold', async () => {
  expect(ontoMap({ eM: -40, nM: 1_200 }, 1_000)).toEqual({ eM: 0, nM: 1_000 });
  expect(ontoMap({ eM: 10, nM: 20 }, 1_000)).toEqual({ eM: 10, nM: 20 });
  const player = playerAt(page);
  await player.press('g');
  await page.mouse.click(20, 600);
  await player.wait(2_600);
  await player.press('p');
  await page.getByRole('button', { name: 'Give up and see the debrief' }).click();
  await page.getByRole('button', { name: 'See the grade' }).click();
  await page.locator('.technique-score').waitFor({ timeout: 60_000 });
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save run file' }).click();
  const { log } = readRecording('saved run', readFileSync((await (await saving).path())!, 'utf8'));
  const pins = log.flatMap(([, action]) => (action.type === 'guess' && action.at ? [action.at] : []));
  expect(pins.length).toBe(3);
  expect(pins.at(-1)!.eM).toBe(0);
});
