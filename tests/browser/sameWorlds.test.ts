import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { worldsAsScript } from '../golden/worldsAsScript';
import { openChromium } from './chromium';

const golden = JSON.parse(readFileSync('tests/golden/worlds.json', 'utf8')) as Readonly<Record<string, string>>;

test('Chromium makes all six grounds with the bits of Node', async () => {
  const [script, browser] = await Promise.all([worldsAsScript(), openChromium()]);
  const page = await browser.newPage();
  const made = await page.evaluate(
    `${script};Object.fromEntries(${JSON.stringify(Object.keys(golden))}.map((style) => [style, Worlds.digestOfStyle(style)]))`,
  );
  await browser.close();
  expect(made).toEqual(golden);
});
