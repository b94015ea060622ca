import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { clubReport } from '../../src/core/club/clubReport';
import { mergeTables } from '../../src/core/club/mergeTables';
import { pageOf } from '../../src/core/club/page';
import { savedTableOf } from '../../src/core/club/savedTable';
import { bookText } from '../../src/core/logbook/bookFile';
import type { BookRecord } from '../../src/core/logbook/record';
import { openExercise } from '../../src/core/run/exercise';
import { beginLive, tickOnce } from '../../src/core/run/live';
import { recordingOf, writeRecording } from '../../src/core/run/record';
import { packedScenario } from '../../src/core/scenario/link';
import type { Scenario } from '../../src/core/scenario/schema';
import { FELL, handmadeRow } from '../core/club/handmadeTable';
import { smallField } from '../core/club/smallField';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { PAYLOADS } from './markup';

let browser: Browser;
let context: BrowserContext;
let page: Page;
let site: Awaited<ReturnType<typeof openBuiltPage>>;

/** The content policy is put out of force here: what is tried is the page itself, which must hold without that second wall. */
beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  context = await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US', bypassCSP: true });
  await context.addInitScript(() => {
    Object.assign(window, { hits: 0, hit: () => Object.assign(window, { hits: (window as unknown as { hits: number }).hits + 1 }) });
  });
  page = await context.newPage();
  await page.goto(site.url);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

const give = (on: Page, label: string, text: string) =>
  on.getByLabel(label, { exact: true }).setInputFiles({ name: 'own.json', mimeType: 'application/json', buffer: Buffer.from(text) });
const MADE = '[onerror],[onload],[onfocus],[ontoggle],[onstart],iframe,object,marquee,math,template,meta[http-equiv=refresh]';
/** Scripts that ran, and elements that markup made. */
const harm = (on: Page) =>
  on.evaluate(
    (made) => [
      (window as unknown as { hits: number }).hits,
      ...[...document.querySelectorAll(made)].map(({ outerHTML }) => outerHTML.slice(0, 80)),
    ],
    MADE,
  );
const inPieces = <T>(of: readonly T[], size: number): readonly (readonly T[])[] =>
  Array.from({ length: Math.ceil(of.length / size) }, (_, i) => of.slice(i * size, (i + 1) * size));
/** Letters behind a payload, so that no two names of an exercise are taken for each other. */
const ENDINGS = ['ash', 'bog', 'crag', 'dale', 'elm', 'fell', 'gill', 'holm'];

test('the 200 pieces of markup do harm where a page takes them for markup: each second one at the least makes an element', async () => {
  const bare = await context.newPage();
  const harmful: string[] = [];
  for (const payload of PAYLOADS) {
    await bare.goto('about:blank');
    await bare.evaluate((text) => {
      document.body.innerHTML = text;
    }, payload);
    if ((await harm(bare)).some((found) => found !== 0)) harmful.push(payload);
  }
  await bare.close();
  expect(new Set(PAYLOADS).size).toBe(200);
  expect(harmful.length).toBeGreaterThanOrEqual(100);
});

test('200 pieces of markup as keys and values of a file stay text in the list of its faults on the start page', async () => {
  for (const some of inPieces(PAYLOADS, 10)) {
    const keys = Object.fromEntries(some.map((text) => [text.slice(0, 60), text]));
    await give(page, 'Exercise file', JSON.stringify({ ...smallField('x', [640, 610], 60), level: some[1], ...keys }));
    await page.locator('.own-file-faults').getByText(some[0]!.slice(0, 60), { exact: false }).first().waitFor();
    const said = (await page.locator('.own-file-faults').textContent())!;
    expect(some.filter((text) => !said.includes(text.slice(0, 60)))).toEqual([]);
  }
  await give(page, 'Run file', JSON.stringify(Object.fromEntries(PAYLOADS.map((text, i) => [`${i}${text}`.slice(0, 60), 1]))));
  await page.locator('.recent').getByRole('alert').getByText('can’t be opened').waitFor();
  expect(await harm(page)).toEqual([0]);
});

test('200 pieces of markup in the address open nothing, and as settings of the Listening room they set nothing', async () => {
  for (const some of inPieces(PAYLOADS, 20)) {
    await page.evaluate(async (payloads) => {
      for (const text of payloads) {
        for (const room of ['ground', 'debrief', 'share', 'exercise', 'logbook', ''])
          location.hash = `/${room}/${encodeURIComponent(text)}`;
        location.hash = `/ground/%${text}`;
        location.hash = `/drills/${text}?${text}`;
        location.hash = `/listen/${text}`;
        const dials = ['gainDb', 'headingDeg', 'overDb', text].map((key) => `${key}=${encodeURIComponent(text)}`);
        location.hash = `/listen/back-signal?${dials.join('&')}&projector=${text}&gainDb=${text}`;
      }
      await new Promise((done) => setTimeout(done, 60));
    }, some);
    await page.locator('#listening main, #listening [role=main], #listening h1').first().waitFor();
    expect(await harm(page)).toEqual([0]);
  }
  await page.goto(`${site.url}#/`);
  await page.getByRole('heading', { name: 'Faintward' }).waitFor();
  expect(await harm(page)).toEqual([0]);
});

test('200 pieces of markup as notes, run titles, drills and devices of a logbook stay text in the logbook, on the list of drills and on the start page', async () => {
  const entry = (i: number) => ({ atMs: 1_930_000_000_000 + i, day: '2031-02-27' as const });
  const records = PAYLOADS.flatMap((text, i): readonly BookRecord[] => [
    { ...entry(i), id: `n${text}`.slice(0, 60), kind: 'note', note: `o${i}${text}`.slice(0, 60), text },
    {
      ...entry(i),
      id: `r${i}`,
      kind: 'run',
      title: text.slice(0, 60),
      digest: text.slice(0, 60),
      technique: 50,
      habits: {},
      found: true,
      minutes: 3,
    },
    { ...entry(i), id: `c${i}`, kind: 'check', device: text, volumeDb: -12, thresholdDb: 3 },
    {
      ...entry(i),
      id: `s${i}`,
      kind: 'session',
      drill: text.slice(0, 40),
      as: 'practice',
      number: 3,
      rightShare: 1,
      level: 2,
      streak: 0,
      erred: false,
      seconds: 60,
      aided: false,
    },
  ]);
  await page.goto(`${site.url}#/logbook`);
  await give(page, 'Logbook file', bookText(records));
  await page.getByText(/new entries of/).waitFor();
  const shown = await page.locator('.book-note p, .book-run-title').allTextContents();
  for (const text of PAYLOADS) expect(shown).toContain(text.slice(0, 60));
  expect(await harm(page)).toEqual([0]);
  for (const room of ['#/drills', '#/drills/hearing-check', '#/']) {
    await page.goto(site.url + room);
    await page.locator('h1').first().waitFor();
    expect(await harm(page)).toEqual([0]);
  }
});

/** An exercise whose every text is markup: title, author, brief, and the names of its tags. */
function markedUp(some: readonly string[], i: number): Scenario {
  const plain = smallField('markup', [640, 610], 60);
  const [tag] = plain.tags;
  const tags = ENDINGS.map((ending, j) => ({
    ...tag!,
    name: `${some[j % some.length]!.slice(0, 34)} ${ending}`,
    at: [640 - 20 * j, 610] as [number, number],
  }));
  const [title, author] = [some[i % some.length]!.slice(0, 60), some[(i + 1) % some.length]!.slice(0, 60)];
  return { ...plain, title, author, tags, brief: some.join(' ').slice(0, 600) };
}

const { world } = openExercise(smallField('markup', [640, 610], 60));

/** A second of a run that is given up, as the text of its file. */
function runOn(scenario: Scenario, name: string): string {
  const exercise = openExercise(scenario, world);
  let live = beginLive(exercise);
  for (let tick = 0; tick < 20; tick++) live = tickOnce(exercise, live, tick === 10 ? [{ type: 'mark' }, { type: 'giveUp' }] : []);
  return writeRecording(recordingOf(exercise, live, { name, by: 'person' }));
}

test('200 pieces of markup as title, brief, author and tags stay text where a link brings them, where they are shared and on the ground', async () => {
  const markings = inPieces(PAYLOADS, 14).map(markedUp);
  for (const scenario of markings) {
    await page.goto(`${site.url}#/exercise/${packedScenario(scenario)}`);
    await page.locator('h1', { hasText: scenario.title }).waitFor();
    expect(await page.locator('.opening-brief').textContent()).toBe(scenario.brief);
    expect(await harm(page)).toEqual([0]);
    await page.getByRole('button', { name: 'Start', exact: true }).click();
    await page.locator('.map-window canvas').waitFor({ timeout: 90_000 });
    expect(await page.locator('.bar-task').textContent()).toBe(scenario.brief);
    expect(await harm(page)).toEqual([0]);
    await page.goto(`${site.url}#/share`);
    await give(page, 'Exercise file', JSON.stringify(scenario));
    await page.locator('.share-ways h2', { hasText: scenario.title }).waitFor();
    expect(await harm(page)).toEqual([0]);
  }
});

test('200 pieces of markup as names of a run, its exercise and its tags stay text in the debrief', async () => {
  for (const [i, some] of inPieces(PAYLOADS, 10).entries()) {
    await page.goto(`${site.url}#/`);
    await page.getByRole('heading', { name: 'Faintward' }).waitFor();
    await give(page, 'Run file', runOn(markedUp(some, i), some[(i + 2) % some.length]!.slice(0, 60)));
    await page.locator('.technique-score').waitFor({ timeout: 90_000 });
    expect(await harm(page)).toEqual([0]);
  }
});

test('200 pieces of markup as names in a club table stay text on its screen and on the page that it is saved as', async () => {
  const rows = PAYLOADS.map((text) => handmadeRow(text.slice(0, 60)));
  const table = mergeTables({ exercises: [], rows: [] }, { exercises: [{ ...FELL, title: PAYLOADS[2]!.slice(0, 60) }], rows });
  const file = await context.newPage();
  await file.setContent(pageOf(clubReport(table)));
  const said = (await file.locator('body').textContent())!;
  expect(PAYLOADS.filter((text) => !said.includes(text.slice(0, 60).trim()))).toEqual([]);
  expect(await harm(file)).toEqual([0]);
  await page.goto(`${site.url}#/club`);
  const saved = { ...savedTableOf(table, false), report: clubReport(table), faults: [] };
  await give(page, 'Run files and saved tables', JSON.stringify(saved));
  await page.getByRole('status').getByText('files checked').waitFor();
  await page.locator('.club-ranking').getByText(PAYLOADS[1]!.slice(0, 30)).first().waitFor();
  expect(await harm(page)).toEqual([0]);
});
