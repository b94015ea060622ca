import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';

let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;
let page: Page;

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  const context = await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US', acceptDownloads: true });
  context.setDefaultTimeout(30_000);
  page = await context.newPage();
  await page.goto(`${site.url}#/desk`);
  await button('Begin from nothing').click();
  await button('Ground').click();
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

const button = (name: string) => page.getByRole('button', { name, exact: true });
const axeFaults = async () => {
  const { violations } = await new AxeBuilder({ page: page as never }).analyze();
  return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${String(target)}`));
};
type Ground = { readonly coverRules?: unknown; readonly patches?: readonly { readonly cover: string; readonly outline: unknown[] }[] };
async function saved(): Promise<Ground> {
  const saving = page.waitForEvent('download');
  await button('Save the file').click();
  const chunks: Buffer[] = [];
  for await (const chunk of await (await saving).createReadStream()) chunks.push(chunk as Buffer);
  return JSON.parse(Buffer.concat(chunks).toString('utf8')).ground;
}
const painted = () =>
  page
    .locator('.run-map canvas')
    .first()
    .evaluate((canvas) => (canvas as HTMLCanvasElement).toDataURL());

test('a rule covers the land by height; crossed bounds are told at the rule, undo takes it away again', async () => {
  await page.getByText('The map shows this ground.').waitFor();
  const before = await saved();
  const drawn = await painted();
  await button('Cover by height and slope …').click();
  const rule = page.getByRole('group', { name: 'Rule 1' });
  await rule.getByRole('combobox', { name: 'Covered by' }).selectOption('rock');
  await rule.getByRole('spinbutton', { name: 'Slope from' }).fill('');
  await rule.getByRole('spinbutton', { name: 'Slope up to' }).fill('');
  await rule.getByRole('spinbutton', { name: /^From/ }).fill('165');
  await page.getByText('The map shows this ground.').waitFor();
  expect((await saved()).coverRules).toEqual([{ cover: 'rock', aboveM: 165 }]);
  await expect.poll(painted).not.toBe(drawn);
  await rule.getByRole('spinbutton', { name: /^Up to/ }).fill('100');
  await page.locator('.desk-faults[data-field="ground.coverRules.0"]').getByText('bounds that no ground lies between').waitFor();
  expect(await axeFaults()).toEqual([]);
  await button('Remove rule 1').click();
  expect(await saved()).toEqual(before);
});

test('a patch is set down by keys, made water, bent and taken away as one', async () => {
  const before = await saved();
  await button('On the map').click();
  await button('Patch of cover').click();
  await page.locator('.run-map').press('Enter');
  await page.getByRole('heading', { name: 'Wood 1, corner 1' }).waitFor();
  await page.getByRole('combobox', { name: 'Covered by' }).selectOption('water');
  await page.getByRole('heading', { name: 'Water 1, corner 1' }).waitFor();
  await page.locator('.run-map').press('Shift+ArrowRight');
  await button('One more after it').click();
  const { patches } = await saved();
  expect(patches).toHaveLength(1);
  expect(patches![0]).toMatchObject({ cover: 'water', outline: { length: 7 } });
  expect(await axeFaults()).toEqual([]);
  await button('Remove the patch').click();
  expect(await saved()).toEqual(before);
  await button('Undo').click();
  expect((await saved()).patches).toEqual(patches);
});

test('a tag in painted water is a fault of the ground', async () => {
  await page.locator('.desk-place', { hasText: 'Tag 1' }).click();
  await page.getByRole('spinbutton', { name: /^East/ }).fill('1000');
  await page.getByRole('spinbutton', { name: /^North/ }).fill('1000');
  await page.locator('.desk-faults[data-field="tags.0.at"]').getByText('the tag lies in water').waitFor();
});

test.each([
  [390, 844],
  [844, 390],
])('at %i × %i rules and patches are 44 px to press and run over no edge', async (width, height) => {
  await page.setViewportSize({ width, height });
  for (const panel of ['Ground', 'On the map']) {
    await button(panel).click();
    if (panel === 'Ground') await page.getByRole('button', { name: /^(Cover by height and slope …|One more rule)$/ }).click();
    const small = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('.desk-panel button, .desk-panel select, .desk-panel input:not([type=checkbox])')]
        .filter((one) => one.offsetHeight > 0 && (one.offsetHeight < 44 || one.offsetWidth < 44))
        .map((one) => one.textContent || one.outerHTML),
    );
    expect(small).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
  }
});
