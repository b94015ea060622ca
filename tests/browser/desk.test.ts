import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';

let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;
let context: BrowserContext;
let page: Page;
const troubles: string[] = [];

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  context = await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US', acceptDownloads: true });
  context.setDefaultTimeout(30_000);
  page = await context.newPage();
  page.on('pageerror', ({ message }) => troubles.push(message));
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

const axeFaults = async () => {
  const { violations } = await new AxeBuilder({ page: page as never }).analyze();
  return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${String(target)}`));
};

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true });
const open = (panel: string) => button(panel).click();
const east = () => page.getByRole('spinbutton', { name: /^East/ });
const whereTag = async () => (await page.locator('.desk-place').nth(1).locator('.number').textContent())!;

/** The text of the exercise as it would be saved now. */
async function savedText(): Promise<string> {
  const saving = page.waitForEvent('download');
  await button('Save the file').click();
  const chunks: Buffer[] = [];
  for await (const chunk of await (await saving).createReadStream()) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks).toString('utf8');
}

test('from the start page a lesson and a level give an exercise on the desk, without fault and with its land', async () => {
  await page.goto(site.url);
  await button('Course desk').click();
  await page.getByRole('combobox', { name: 'Lesson' }).selectOption('close-in');
  await button('Level 1').click();
  expect(await axeFaults()).toEqual([]);
  await button('Draw it').click();
  await page.getByText('Without fault').waitFor({ timeout: 180_000 });
  const drawn = JSON.parse(await savedText()) as { lesson: string; level: number };
  expect(drawn).toMatchObject({ lesson: 'close-in', level: 1 });
  expect(await axeFaults()).toEqual([]);
});

test('a tag carried by pointer and by keys goes back by undo and there again by redo, byte for byte', async () => {
  const before = await savedText();
  await open('On the map');
  await page.locator('.desk-place').nth(1).click();
  const at = await whereTag();
  await page.locator('.run-map').focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Shift+ArrowUp');
  const [eM, nM] = at.split(' · ').map(Number);
  expect(await whereTag()).toBe(`${eM! + 10} · ${nM! + 100}`);
  const moved = await savedText();
  await page.keyboard.press('Control+z');
  await expect.poll(whereTag).toBe(at);
  expect(await savedText()).toBe(before);
  await page.keyboard.press('Control+y');
  expect(await savedText()).toBe(moved);
  await button('Undo').click();

  const box = (await page.locator('.run-map').boundingBox())!;
  const scale = (0.94 * Math.min(box.width, box.height)) / Number(JSON.parse(before).ground.sizeM);
  const half = JSON.parse(before).ground.sizeM / 2;
  const on = (e: number, n: number) => [box.x + box.width / 2 + (e - half) * scale, box.y + box.height / 2 - (n - half) * scale] as const;
  await button('The whole map').click();
  await page.mouse.move(...on(eM!, nM!));
  await page.mouse.down();
  await page.mouse.move(...on(eM! - 40, nM!), { steps: 4 });
  await page.mouse.move(...on(eM! - 80, nM! + 50), { steps: 4 });
  await page.mouse.up();
  const [eNowM, nNowM] = (await whereTag()).split(' · ').map(Number);
  expect(Math.abs(eNowM! - (eM! - 80))).toBeLessThanOrEqual(3);
  expect(Math.abs(nNowM! - (nM! + 50))).toBeLessThanOrEqual(3);
  await button('Undo').click();
  expect(await savedText()).toBe(before);
});

test('a power line is set down, bent and taken away again without a mouse', async () => {
  const before = await savedText();
  await open('On the map');
  await button('Power line').focus();
  await page.keyboard.press('Enter');
  await page.locator('.run-map').focus();
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Power line 1, corner 1' }).waitFor();
  await button('One more after it').focus();
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Power line 1, corner 2' }).waitFor();
  expect(JSON.parse(await savedText()).ground.powerLines[0].route).toHaveLength(3);
  expect(await axeFaults()).toEqual([]);
  for (let corner = 2; corner > 0; corner--) {
    await page.locator('.desk-place', { hasText: 'Power line' }).first().press('Enter');
    await page.locator('.run-map').press('Delete');
  }
  expect(await savedText()).toBe(before);
});

test('a fault is told at the field that has it, and what has faults is neither walked nor shared', async () => {
  await open('On the map');
  await page.locator('.desk-place').nth(1).click();
  const was = await east().inputValue();
  await east().fill('99999');
  await page.locator('.desk-faults[data-field="tags.0.at"]').getByText('Mend:').waitFor();
  expect(await east().getAttribute('aria-invalid')).toBe('true');
  expect(await button('Walk it').isDisabled()).toBe(true);
  expect(await button('Share').isDisabled()).toBe(true);
  expect(await axeFaults()).toEqual([]);
  await east().fill(was);
  await page.getByText('Without fault').waitFor();
  await open('Kit');
  await page.getByRole('spinbutton', { name: /^Noise of the receiver/ }).fill('');
  await page.locator('.desk-faults[data-field="kit.noiseFigureDb"]').waitFor();
  await page.keyboard.press('Control+z');
  await page.getByText('Without fault').waitFor();
  const before = await savedText();
  await page.getByRole('checkbox', { name: 'Tag check before leaving' }).check();
  expect(JSON.parse(await savedText()).tagCheck).toBe(true);
  await page.getByRole('checkbox', { name: 'Tag check before leaving' }).uncheck();
  expect(await savedText()).toBe(before);
});

test('the land follows its sliders, and a start where nobody can stand is told at the start', async () => {
  await open('Ground');
  const wood = page.getByRole('slider', { name: 'Wood' });
  await wood.press('End');
  await page.getByText('shares add up').waitFor();
  await wood.press('Home');
  await wood.press('PageUp');
  await page.getByText('The map shows this ground.').waitFor();
  expect(JSON.parse(await savedText()).ground.cover.wood).toBe(0.1);
  const painted = await page
    .locator('.run-map canvas')
    .first()
    .evaluate((canvas) => (canvas as HTMLCanvasElement).toDataURL());
  await button('Other land of the same kind').click();
  await expect
    .poll(
      () =>
        page
          .locator('.run-map canvas')
          .first()
          .evaluate((canvas) => (canvas as HTMLCanvasElement).toDataURL()),
      { timeout: 30_000 },
    )
    .not.toBe(painted);
  await button('Undo').click();
  await page.getByText('The map shows this ground.').waitFor();
  await page.getByText('Without fault').waitFor();
  await open('On the map');
  // A barn over the start.
  const [eM, nM] = (await page.locator('.desk-place .number').first().textContent())!.split(' · ');
  await button('Building').click();
  await page.locator('.run-map').press('Enter');
  await east().fill(eM!);
  await page.getByRole('spinbutton', { name: /^North/ }).fill(nM!);
  await page.locator('.desk-place', { hasText: 'Start' }).getByText('fault').click();
  await page.locator('.desk-faults[data-field="start.at"]').getByText('the start stands in water, in a building').waitFor();
  await page.locator('.desk-place', { hasText: 'Building' }).last().click();
  await button('Remove').click();
  await page.getByText('Without fault').waitFor();
});

test('a picture of the truth is surveyed over the land and anew after a change; at a place the ring and its waves are shown', async () => {
  await open('On the map');
  await page.locator('.desk-place').nth(1).click();
  await page.keyboard.press('Escape');
  await button('Truth').click();
  await button('Ground in view of the tag').click();
  const sentence = page.locator('.layer-key [role=status]');
  await sentence.getByText(/in line of sight from \d+ % of the ground/).waitFor();
  expect(await axeFaults()).toEqual([]);
  const before = await sentence.textContent();
  await open('Ground');
  await page.getByRole('slider', { name: 'Height of the relief' }).press('End');
  await expect.poll(() => sentence.textContent({ timeout: 30_000 }), { timeout: 60_000 }).not.toBe(before);
  await button('Undo').click();
  await button('Nothing').click();
  await button('Listen at a place: ring and waves').click();
  const words = page.locator('.desk-listen [role=status]');
  await words.getByText('m off').waitFor();
  const here = await words.textContent();
  await page.keyboard.press('Shift+ArrowRight');
  await expect.poll(() => words.textContent()).not.toBe(here);
  await page.getByRole('slider', { name: 'Gain less attenuation' }).press('Home');
  const ticks = page.locator('.desk-listen .ring-ticks');
  await expect.poll(() => ticks.getAttribute('d')).toBe('');
  await page.getByRole('slider', { name: 'Gain less attenuation' }).press('End');
  await expect.poll(async () => (await ticks.getAttribute('d'))!.length).toBeGreaterThan(100);
  await button('Let it sound').click();
  await button('Silence').click();
  expect(await axeFaults()).toEqual([]);
  await button('Stop listening').click();
});

test('four rehearsals say whether, how long, where it misleads, what it teaches and what is unfair, also at its field', async () => {
  await button('New …').click();
  await page.getByRole('combobox', { name: 'Exercises of the program' }).selectOption('farmyard');
  await page.getByRole('slider', { name: 'Time at most' }).press('Home'); // five minutes
  await open('Rehearse');
  await button('4 walks').click();
  await button('Rehearse').last().click();
  await page.getByRole('progressbar', { name: 'Rehearsal' }).waitFor();
  await page.getByRole('heading', { name: 'What is unfair' }).waitFor({ timeout: 120_000 });
  const said = await page.locator('.desk-verdict').textContent();
  expect(said).toMatch(/Found in [0-4] of 4 walks/);
  expect(said).toMatch(/Where it misleads.* of \d+ bearings are off by more than 15°/);
  expect(said).toMatch(/What it teachesIts lesson, the last fifty metres, .*flat or upright: the whip leans by 75°/);
  expect(said).toMatch(/What is unfair.*(ran out of time|a learner is slower)/);
  expect(await axeFaults()).toEqual([]);
  await open('Exercise');
  await page.locator('.desk-faults[data-field="limits.timeS"]').getByText('Unfair:').waitFor();
  await button('Undo').click();
  expect(await page.locator('.desk-faults').count()).toBe(0);
  await open('Rehearse');
  await page.getByText('The exercise was changed since the last rehearsal.').waitFor();
  await button('Redo').click();
  await page.getByRole('heading', { name: 'What is unfair' }).waitFor();
  await button('Undo').click();
});

test('a rehearsal that is stopped is judged by the walks that are over', async () => {
  await button('20 walks').click();
  await button('Rehearse').last().click();
  await expect.poll(() => page.locator('.desk-rehearse [role=status]').textContent(), { timeout: 60_000 }).toMatch(/^[1-9]/);
  await button('Stop').click();
  const found = page.locator('.desk-verdict section').first().locator('.number').last();
  expect(Number(await found.textContent())).toBeLessThan(20);
});

test('a reload loses nothing: neither the exercise nor what can be undone', async () => {
  await open('Exercise');
  await page.getByRole('textbox', { name: 'Title' }).fill('Kept over a reload');
  const kept = await savedText();
  await page.waitForTimeout(1_000); // it is kept some tenths of a second after the last key
  await page.reload();
  await page.getByRole('textbox', { name: 'Title' }).waitFor();
  expect(await savedText()).toBe(kept);
  await button('Undo').click();
  expect(await page.getByRole('textbox', { name: 'Title' }).inputValue()).not.toBe('Kept over a reload');
  await button('Redo').click();
  expect(await savedText()).toBe(kept);
});

test('shared, the exercise has a code and four words; walked, it opens on the ground', async () => {
  await page.getByText('Without fault').waitFor({ timeout: 30_000 });
  await button('Share').click();
  await page.getByRole('heading', { name: 'Kept over a reload' }).waitFor();
  expect((await page.locator('.share-words').textContent())!.split(' ')).toHaveLength(4);
  await page.goto(`${site.url}#/desk`);
  const other = await context.newPage();
  await other.goto(`${site.url}#/desk`);
  await other.getByRole('button', { name: 'Walk it', disabled: false }).click();
  await other.locator('.map-window canvas').waitFor({ timeout: 60_000 });
  await other.close();
});

test.each([
  [390, 844],
  [844, 390],
])('at %i × %i nothing runs over the edge and everything that is pressed is 44 px', async (width, height) => {
  await page.setViewportSize({ width, height });
  await page.goto(`${site.url}#/desk`);
  await button('Undo').waitFor();
  for (const panel of ['Exercise', 'Ground', 'On the map', 'Kit', 'Rehearse']) {
    await open(panel);
    const small = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('.desk button, .desk select, .desk input, .desk textarea, .desk [role=slider]')]
        .map((one) => one.closest<HTMLElement>('.desk-tick') ?? one)
        .filter((one) => one.offsetHeight > 0 && (one.offsetHeight < 44 || one.offsetWidth < 44))
        .map((one) => one.textContent || one.outerHTML),
    );
    expect(small).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
  }
  expect(await axeFaults()).toEqual([]);
  expect(troubles).toEqual([]);
});
