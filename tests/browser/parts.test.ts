import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { playerAt } from './player';

const plain = JSON.parse(readFileSync('tests/browser/short-walk.json', 'utf8'));
const EXERCISE = {
  ...plain,
  title: 'In parts',
  brief: 'Mark one bearing.',
  stages: [
    { after: { kind: 'bearings', count: 1 }, text: 'Now walk 20 m.' },
    { after: { kind: 'walked', m: 20 }, text: 'Now <b>find</b> it.' },
    { after: { kind: 'reached', at: [900, 900], withinM: 20 }, text: 'Too far: nobody comes here.' },
  ],
};
let browser: Browser;
let page: Page;
let site: Awaited<ReturnType<typeof openBuiltPage>>;

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  page = await browser.newPage({ viewport: { width: 1366, height: 768 }, locale: 'en-US' });
  await page.goto(site.url);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

const noFaults = async () => {
  const { violations } = await new AxeBuilder({ page: page as never }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
};
const goOn = (name: string) => page.getByRole('dialog', { name }).getByRole('button', { name: 'Go on', exact: true });

test('a text comes when what it waits for is done, halts the run while it is read, and stands in the bar from then on', async () => {
  const player = playerAt(page);
  await player.openExercise({ name: 'parts.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(EXERCISE)) });
  expect(await page.locator('.bar-task').textContent()).toBe('Mark one bearing.');
  await player.press('m');
  const second = page.getByRole('dialog', { name: 'Part 2 of 4' });
  await second.waitFor();
  expect(await second.locator('.sheet-brief').textContent()).toBe('Now walk 20 m.');
  await noFaults();
  const stoodAt = await page.locator('.bar-number').first().textContent();
  await player.wait(1_200);
  expect(await page.locator('.bar-number').first().textContent()).toBe(stoodAt);
  await goOn('Part 2 of 4').click();
  await second.waitFor({ state: 'detached' });
  expect(await page.locator('.bar-task').textContent()).toBe('Now walk 20 m.');
  await player.press(' ');
  await page.getByRole('dialog', { name: 'Part 3 of 4' }).waitFor({ timeout: 60_000 });
  expect(await page.locator('.sheet-brief').textContent()).toBe('Now <b>find</b> it.');
});

test('a pause later on is a pause, with the text of now', async () => {
  await goOn('Part 3 of 4').click();
  await playerAt(page).press('p');
  await page.getByRole('dialog', { name: 'Paused' }).waitFor();
  expect(await page.locator('.sheet-brief').textContent()).toBe('Now <b>find</b> it.');
});

test('the debrief tells when each part came, and which one did not', async () => {
  await page.getByRole('button', { name: 'Give up and see the debrief' }).click();
  await page.getByRole('button', { name: 'See the grade' }).click();
  await page.locator('.technique-score').waitFor({ timeout: 60_000 });
  const lines = await page.getByRole('region', { name: 'Parts', exact: true }).locator('li').allTextContents();
  expect(lines.length).toBe(4);
  expect(lines[0]).toMatch(/^0:00 to 0:0\d, 0 m Mark one bearing\.$/);
  expect(lines[1]).toMatch(/, 2[01] m Now walk 20 m\.$/);
  expect(lines[3]).toBe('not come to Too far: nobody comes here.');
});

test('at the Course desk a text on the way is set down, told what is wrong with it, and taken away', async () => {
  await page.goto(`${site.url}#/desk`);
  await page.getByRole('combobox', { name: 'Exercises of the program' }).selectOption('the-sheepfold');
  await page.getByRole('button', { name: 'A text on the way …' }).click();
  const part = page.getByRole('group', { name: 'Part 2' });
  await part.getByRole('combobox', { name: 'Comes when' }).selectOption('walked');
  await part.getByRole('spinbutton', { name: /^Walked/ }).fill('5');
  await part.getByText('Mend:').first().waitFor();
  await part.getByRole('spinbutton', { name: /^Walked/ }).fill('200');
  await part.getByRole('textbox', { name: 'Text of part 2' }).fill('Now by ear.');
  await noFaults();
  await page.getByText('Mend:').waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'Remove part 2' }).click();
  await part.waitFor({ state: 'detached' });
});
