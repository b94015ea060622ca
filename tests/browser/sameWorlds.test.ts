import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { gradeOfFile } from '../golden/engineAnswers';
import { engineScript } from '../golden/engineScript';
import { longRunText } from '../golden/longRun';
import { openChromium } from './chromium';

const golden = JSON.parse(readFileSync('tests/golden/worlds.json', 'utf8')) as Readonly<Record<string, string>>;

test('Chromium makes all six grounds with the bits of Node, and replays a run of half an hour to its very grade', async () => {
  const [script, browser] = await Promise.all([engineScript(), openChromium()]);
  const run = longRunText();
  const page = await browser.newPage();
  const made = await page.evaluate(
    `${script};Object.fromEntries(${JSON.stringify(Object.keys(golden))}.map((style) => [style, Engine.digestOfStyle(style)]))`,
  );
  expect(made).toEqual(golden);
  const grade = JSON.parse(await page.evaluate<string>(`${script};Engine.gradeOfFile(${JSON.stringify(run)})`)) as unknown;
  await browser.close();
  expect(grade).toMatchObject({ replayMatches: true });
  expect(grade).toEqual(JSON.parse(gradeOfFile(run)));
});
