import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { realTileText } from '../core/elevation/realTile';
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
  await page.goto(`${site.url}#/desk`);
  await button('Begin from nothing').click();
  await button('Ground').click();
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
const own = () => page.getByRole('region', { name: 'Own ground' });
const relief = () => page.getByRole('application', { name: /^Relief of/ });
const give = (name: string, text: string) =>
  page.getByLabel('Elevation file', { exact: true }).setInputFiles({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });

type Saved = {
  readonly ground: { readonly sizeM: number; readonly cellM: number; readonly own?: { readonly lowM: number; readonly source: string } };
};
async function saved(): Promise<Saved> {
  const saving = page.waitForEvent('download');
  await button('Save the file').click();
  const chunks: Buffer[] = [];
  for await (const chunk of await (await saving).createReadStream()) chunks.push(chunk as Buffer);
  return JSON.parse(Buffer.concat(chunks).toString('utf8'));
}

/** A plane of 2 by 2 km in cells of 50 m that falls by 0.2 m a cell to the east, `change` being its header. */
const plane = (change: Readonly<Record<string, number>> = {}, height = (c: number) => 200 - 0.2 * c): string => {
  const header = { ncols: 40, nrows: 40, xllcorner: 4_300_000, yllcorner: 5_200_000, cellsize: 50, ...change };
  const row = Array.from({ length: header.ncols }, (_, c) => height(c).toFixed(1)).join(' ');
  return [...Object.entries(header).map(([name, value]) => `${name} ${value}`), ...Array(header.nrows).fill(row)].join('\n');
};

test('what is wrong with a file is told in a sentence with its mend', async () => {
  await button('Own ground from a file …').click();
  const told = own().getByRole('alert').first();
  await give('notes.asc', 'dear diary');
  await told.getByText('a line that no header of an ESRI ASCII grid has').waitFor();
  expect(await told.textContent()).toContain('Mend: give an ESRI ASCII grid (.asc)');
  await give('short.asc', plane().slice(0, -300));
  await told.getByText(/the file ends after \d+ of 1600 heights/).waitFor();
  await give('garden.asc', plane({ cellsize: 5 }));
  await told.getByText('200 by 200 m of ground, and an exercise takes 1000 m at least').waitFor();
  await give('country.asc', plane().replace(/ncols 40\nnrows 40/, 'ncols 40000\nnrows 40000'));
  await told.getByText(/40000 by 40000 cells, more than the 4000000 that are read/).waitFor();
  expect(await axeFaults()).toEqual([]);
});

test('land that can only be feet is remarked on, and read again in feet', async () => {
  await give(
    'steep.asc',
    plane({}, (c) => 60 * c),
  );
  await own().getByText('If the heights are in feet, say so here').waitFor();
  await own().getByText('highest 2340 m').waitFor();
  await button('Feet').click();
  await own().getByText('highest 713 m').waitFor();
  await button('Metres').click();
  await own().getByText('highest 2340 m').waitFor();
});

test('a real file that is dropped on the desk shows its relief; a piece is taken by keys and by pointer', async () => {
  const text = realTileText(0, 1_040, 60, 120);
  const dropped = await page.evaluateHandle((asc) => {
    const carried = new DataTransfer();
    carried.items.add(new File([asc], 'N57E011.asc', { type: 'text/plain' }));
    return carried;
  }, text);
  await page.dispatchEvent('.desk', 'drop', { dataTransfer: dropped });
  await own()
    .getByText(/120 by 60 cells of 49 by 93 m/)
    .waitFor();
  await own().getByText('The file is in degrees or on the grid of web maps: its cells were measured out at 58.0° north').waitFor();
  expect(await axeFaults()).toEqual([]);
  const where = async () =>
    /([\d.]+) km a side, ([\d.]+) km east and ([\d.]+) km north/
      .exec((await relief().getAttribute('aria-label'))!)!
      .slice(1)
      .map(Number);
  const [side, east, north] = await where();
  expect(side).toBe(2);
  await relief().press('Shift+ArrowLeft');
  await relief().press('ArrowUp');
  const [, e1, n1] = await where();
  expect(e1! - east!).toBeCloseTo(-1, 1);
  expect(n1! - north!).toBeCloseTo(0.1, 1);
  const slider = page.getByRole('slider', { name: 'Side of the piece' });
  for (let i = 0; i < 5; i++) await slider.press('ArrowRight');
  expect((await where())[0]).toBe(2.5);
  const box = (await relief().boundingBox())!;
  await page.mouse.move(box.x + box.width * 0.75, box.y + box.height * 0.5);
  await page.mouse.down();
  await page.mouse.up();
  const [, e2] = await where();
  expect(Math.abs(e2! - (0.75 * 120 * 0.0491 - 1.25))).toBeLessThan(0.15);
  await page.mouse.down();
  await page.mouse.move(box.x, box.y, { steps: 4 });
  await page.mouse.up();
  expect((await where()).slice(1)[0]).toBe(0);
});

test('a GeoTIFF is read as well, and one that is cut off is refused', async () => {
  const file = 'tests/core/elevation/tiffs/utm.tif';
  await page.getByLabel('Elevation file', { exact: true }).setInputFiles(file);
  await own()
    .getByText(/cells of 90 by 90 m/)
    .waitFor();
  await own()
    .getByText(/\d+ cells without a height, hatched/)
    .waitFor();
  expect(await axeFaults()).toEqual([]);
  await page
    .getByLabel('Elevation file', { exact: true })
    .setInputFiles({ name: 'half.tif', mimeType: 'image/tiff', buffer: readFileSync(file).subarray(0, 4_000) });
  await own().getByText('a TIFF that can’t be read').waitFor();
  await give('N57E011.asc', realTileText(0, 1_040, 60, 120));
  await relief().waitFor();
  for (let i = 0; i < 5; i++) await page.getByRole('slider', { name: 'Side of the piece' }).press('ArrowRight');
});

test('the exercise is laid on the piece, undo takes it back, redo brings it again, and invented ground comes back', async () => {
  for (let i = 0; i < 8; i++) await relief().press('Shift+ArrowRight');
  await relief().press('Shift+ArrowDown');
  await relief().press('ArrowLeft');
  const before = await saved();
  await button('Use this ground').click();
  await own().getByText('Laid on the ground of the file.').waitFor({ timeout: 60_000 });
  await page.getByText('The map shows this ground.').waitFor();
  const laid = await saved();
  expect(laid.ground).toMatchObject({ sizeM: 2_500, cellM: 10, own: { source: 'N57E011.asc' } });
  expect(await axeFaults()).toEqual([]);
  await button('Undo').click();
  expect(await saved()).toEqual(before);
  await button('Redo').click();
  expect(await saved()).toEqual(laid);
  await button('Back to invented ground').click();
  await page.getByText('The map shows this ground.').waitFor();
  expect((await saved()).ground).not.toHaveProperty('own');
  await button('Undo').click();
  expect(await saved()).toEqual(laid);
  await page.getByRole('textbox', { name: /^Where they come from/ }).fill('A survey of the coast, free to hand on');
  expect((await saved()).ground.own!.source).toBe('A survey of the coast, free to hand on');
});

test('a reload keeps own ground and what undo leads to; the exercise is walked on it', async () => {
  const laid = await saved();
  await page.waitForTimeout(1_000); // it is kept some tenths of a second after the last key
  await page.reload();
  await button('Ground').click();
  await own().getByText('The heights are those of a file.').waitFor();
  expect(await saved()).toEqual(laid);
  await page.getByText('Without fault').waitFor({ timeout: 60_000 });
  await page.getByRole('button', { name: 'Walk it', disabled: false }).click();
  await page.locator('.map-window canvas').waitFor({ timeout: 60_000 });
  await page.keyboard.press(' ');
  const walkedM = async () => Number.parseFloat((await page.locator('.bar-walked').textContent())!.replace(/[^0-9.]/g, ''));
  await expect.poll(walkedM, { timeout: 60_000 }).toBeGreaterThan(5);
  expect(troubles).toEqual([]);
});

test.each([
  [390, 844],
  [844, 390],
  [1920, 1080],
])('at %i × %i nothing of own ground runs over the edge and everything that is pressed is 44 px', async (width, height) => {
  await page.setViewportSize({ width, height });
  await page.goto(`${site.url}#/desk`);
  await button('Ground').click();
  const bring = page.getByRole('button', { name: 'Another piece or file …' });
  if ((await bring.getAttribute('aria-expanded')) === 'false') await bring.click();
  await give('plane.asc', plane());
  await relief().waitFor();
  const small = await page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('.desk-own button, .desk-own [role=slider], .desk-own [role=application], .desk-own input')]
      .filter((one) => one.offsetHeight > 0 && (one.offsetHeight < 44 || one.offsetWidth < 44))
      .map((one) => one.textContent || one.outerHTML),
  );
  expect(small).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
  expect(await axeFaults()).toEqual([]);
  expect(troubles).toEqual([]);
});
