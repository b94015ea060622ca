import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readRecording } from '../../src/core/run/record';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { playerAt } from './player';

const EXERCISE = 'tests/browser/short-walk.json';
let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** Runs in the page before its own scripts: writes fail as on a full disk while `window.full` says so. */
const FULL_DISK = `
  window.full = true;
  for (const deed of ['put', 'add']) {
    const real = IDBObjectStore.prototype[deed];
    IDBObjectStore.prototype[deed] = function (...given) {
      if (window.full) throw new DOMException('no room', 'QuotaExceededError');
      return real.apply(this, given);
    };
  }
`;

/** The store of runs never answers. */
const NO_ANSWER = `
  const open = IDBFactory.prototype.open;
  IDBFactory.prototype.open = function (name, version) {
    return name === 'faintward' ? Object.create(IDBOpenDBRequest.prototype, { addEventListener: { value() {} }, removeEventListener: { value() {} } }) : open.call(this, name, version);
  };
`;

async function pageWith(script: string, viewport = { width: 1366, height: 768 }): Promise<Page> {
  const context = await browser.newContext({ viewport, locale: 'en-US', acceptDownloads: true });
  await context.addInitScript(script);
  const page = await context.newPage();
  await page.goto(site.url);
  return page;
}

/** Remembers every audio context, to stop it as a call would. */
const HOLD_SOUND = `
  window.contexts = [];
  window.AudioContext = class extends AudioContext { constructor(...given) { super(...given); window.contexts.push(this); } };
`;

/** The worker of this name breaks at its first message while \`window.breaks\` names it. */
const BREAKING = `
  window.broken = [];
  const Real = Worker;
  window.Worker = class extends Real {
    constructor(url, options) { super(url, options); this.called = options.name; }
    postMessage(...given) {
      if (this.called !== window.breaks) { super.postMessage(...given); return; }
      window.broken.push(this.called);
      setTimeout(() => this.dispatchEvent(new ErrorEvent('error', { message: 'out of memory', cancelable: true })), 20);
    }
  };
`;

/** Remembers every canvas, also those that are in no page. */
const HOLD_CANVASES = `
  window.canvases = [];
  const create = Document.prototype.createElement;
  Document.prototype.createElement = function (name, ...more) {
    const made = create.call(this, name, ...more);
    if (name === 'canvas') window.canvases.push(made);
    return made;
  };
`;
/** What a graphics driver that restarts does to them: all pictures are gone, then each canvas is told that it may be painted again. */
const LOSE_CANVASES = `
  for (const canvas of window.canvases) {
    const context = canvas.getContext('2d');
    if (!context) continue;
    context.save();
    context.setTransform(1, 0, 0, 1, 0, 0);
    context.fillStyle = '#f0f';
    context.fillRect(0, 0, canvas.width, canvas.height);
    context.restore();
  }
  for (const canvas of window.canvases) canvas.dispatchEvent(new Event('contextrestored'));
`;

const soundRuns = (page: Page) =>
  page.waitForFunction(() => (window as unknown as { contexts: AudioContext[] }).contexts[0]?.state === 'running');

async function giveUp(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Pause', exact: true }).click();
  await page
    .getByRole('button', { name: /give up/i })
    .first()
    .click();
  const sure = page.getByRole('button', { name: /give up/i });
  if (await sure.count()) await sure.last().click();
  await page.getByRole('heading', { name: 'How did it go?' }).waitFor();
}

test('on a full device the run goes on and says that it is not kept; its file can be saved; with room again it lies on the shelf and in the logbook', async () => {
  const page = await pageWith(FULL_DISK);
  const player = playerAt(page);
  await player.openExercise(EXERCISE);
  await player.wait(2_500);
  await page.getByText('This device has no room left.').waitFor();
  expect((await new AxeBuilder({ page: page as never }).analyze()).violations.map(({ id }) => id)).toEqual([]);
  await page.getByRole('button', { name: 'Understood' }).click();
  await giveUp(page);
  await page.getByText('This run is in memory only').waitFor();
  await page.getByRole('button', { name: 'Skip', exact: true }).click();
  await page.locator('.debrief-habits').waitFor({ timeout: 60_000 });
  const saving = page.waitForEvent('download');
  await page.locator('.keep-note').getByRole('button', { name: 'Save run file' }).click();
  expect(readRecording('saved run', readFileSync((await (await saving).path())!, 'utf8')).scenario.title).toBe('Short walk');
  await page.evaluate('window.full = false');
  await page.getByRole('button', { name: 'Try again' }).click();
  await page.locator('.keep-note').waitFor({ state: 'detached' });
  await page.waitForURL(/#\/debrief\/\d+$/);
  await page.goto(`${site.url}#/`);
  await page.locator('.recent-run').first().waitFor();
  expect(await page.locator('.recent-run').allTextContents()).toEqual([expect.stringContaining('Short walk')]);
  await page.goto(`${site.url}#/logbook`);
  await page.getByText('Short walk').first().waitFor();
  await page.context().close();
});

test('a store that never answers does not hold up the exercise, and is told while it is played', async () => {
  const page = await pageWith(NO_ANSWER, { width: 390, height: 844 });
  await playerAt(page).openExercise(EXERCISE);
  await page.getByText('This browser keeps nothing just now.').waitFor({ timeout: 15_000 });
  await page.context().close();
});

test('two tabs play two runs; neither writes over the other, and a third offers both once they are closed', async () => {
  const context = await browser.newContext({ viewport: { width: 1366, height: 768 }, locale: 'en-US' });
  const tabs = [await context.newPage(), await context.newPage()];
  for (const tab of tabs) {
    await tab.goto(site.url);
    const player = playerAt(tab);
    await player.openExercise(EXERCISE);
    await player.wait(2_500);
  }
  const third = await context.newPage();
  await third.goto(site.url);
  await third.waitForTimeout(500);
  expect(await third.getByRole('button', { name: /Go on with/ }).count()).toBe(0);
  for (const tab of tabs) await tab.close();
  await third.reload();
  await third.getByRole('button', { name: /Go on with Short walk/ }).waitFor();
  expect(await third.locator('.unfinished-run').count()).toBe(2);
  await third.getByRole('button', { name: 'Forget the run of Short walk' }).first().click();
  await third.locator('.unfinished-run').first().waitFor({ state: 'detached' });
  await third.getByRole('button', { name: /Go on with Short walk/ }).click();
  await third.locator('.map-window canvas').waitFor({ timeout: 60_000 });
  await context.close();
});

test('sound that the device takes away stops the run and is said; going on brings it back', async () => {
  const page = await pageWith(HOLD_SOUND);
  await playerAt(page).openExercise(EXERCISE);
  await soundRuns(page);
  await page.evaluate('window.contexts[0].suspend()');
  await page.getByRole('dialog', { name: 'Paused' }).waitFor();
  await page.getByText('The device stopped the sound').waitFor();
  await page.getByRole('dialog').getByRole('button', { name: 'Go on', exact: true }).click();
  await soundRuns(page);
  await page.locator('.sheet').waitFor({ state: 'detached' });
  await page.waitForTimeout(600);
  expect(await page.locator('.sheet').count()).toBe(0);
  await page.context().close();
});

test('where no sound can be opened the exercise is there all the same, and says so', async () => {
  const page = await pageWith("AudioWorklet.prototype.addModule = () => Promise.reject(new Error('no worklet today'));");
  await playerAt(page).openExercise(EXERCISE);
  await page.getByRole('button', { name: 'Pause', exact: true }).click();
  await page.getByText('No sound could be opened').waitFor();
  await page.goto(`${site.url}#/listen/back-signal`);
  await page
    .locator('.room')
    .click({ position: { x: 5, y: 5 } })
    .catch(() => {});
  await page.context().close();
});

test('a wave worker that breaks leaves the exercise playable: it opens, beeps are heard and the run ends in a grade', async () => {
  const page = await pageWith(`${BREAKING} window.breaks = 'waves';`);
  const player = playerAt(page);
  await player.openExercise(EXERCISE);
  await player.gainTo(60);
  await player.wait(2_000);
  expect(await page.evaluate('window.broken.length')).toBeGreaterThan(0);
  await giveUp(page);
  await page.getByRole('button', { name: 'Skip', exact: true }).click();
  await page.locator('.technique').waitFor({ timeout: 60_000 });
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save run file' }).click();
  const { heard } = readRecording('saved run', readFileSync((await (await saving).path())!, 'utf8'));
  expect(heard.some((row) => row[4])).toBe(true);
  // a survey that breaks says so and is there when it is asked for again
  await page.evaluate("window.breaks = 'survey'");
  await page.keyboard.press('l');
  await page.getByRole('button', { name: 'Openness' }).click();
  await page.getByText('This layer could not be worked out: out of memory.').waitFor();
  await page.evaluate("window.breaks = ''");
  await page.getByRole('button', { name: 'Nothing' }).click();
  await page.getByRole('button', { name: 'Openness' }).click();
  await page.getByText('This layer could not be worked out').waitFor({ state: 'detached' });
  await page.context().close();
});

test('a ground worker that breaks is said in a sentence, with a way back', async () => {
  const page = await pageWith(`${BREAKING} window.breaks = 'land';`);
  await page.getByRole('button', { name: /^Start/ }).click();
  await page.getByText('This exercise could not be opened: The ground could not be made: out of memory').waitFor();
  await page.evaluate("window.breaks = ''");
  await page.getByRole('button', { name: 'Back' }).click();
  await playerAt(page).openExercise(EXERCISE);
  await page.context().close();
});

test('the clock of the device jumps a day back and a year on: the run goes on at its own pace, is kept, and ends in its debrief', async () => {
  const page = await pageWith('window.off = 0; const real = Date.now; Date.now = () => real() + window.off;');
  const player = playerAt(page);
  await player.openExercise(EXERCISE);
  await player.wait(1_500);
  await page.evaluate('window.off = -86_400_000');
  await player.wait(1_500);
  await page.evaluate('window.off = 31_536_000_000');
  await player.wait(1_500);
  const shown = (await page.locator('.bar-number').first().textContent())!.replace(/[^0-9:]/g, '');
  expect(['0:03', '0:04', '0:05']).toContain(shown);
  await giveUp(page);
  await page.waitForURL(/#\/debrief\/\d+$/);
  await page.context().close();
});

test('a lost graphics context comes back within two seconds: map, skyline and numbers are painted as before, in an exercise and in its debrief', async () => {
  const page = await pageWith(HOLD_CANVASES);
  const player = playerAt(page);
  await player.openExercise(EXERCISE);
  await player.press('m');
  await player.wait(1_000);
  const seen = async (where: string) => (await page.locator(where).first().screenshot({ animations: 'disabled' })).toString('base64');
  const before = [await seen('.map-window'), await seen('.skyline')];
  await page.evaluate(LOSE_CANVASES);
  await player.wait(1_900);
  expect([await seen('.map-window'), await seen('.skyline')]).toEqual(before);
  await giveUp(page);
  await page.getByRole('button', { name: 'Skip', exact: true }).click();
  await page.locator('.debrief-habits').waitFor({ timeout: 60_000 });
  await player.wait(1_000);
  const shown = await seen('.run-map');
  await page.evaluate(LOSE_CANVASES);
  await player.wait(1_900);
  expect(await seen('.run-map')).toBe(shown);
  await page.context().close();
});
