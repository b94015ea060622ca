import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { randomFor } from '../../src/core/random/draw';
import { openBuiltPage } from '../browser/builtPage';
import { browserPath } from '../browser/chromium';
import { playerAt } from '../browser/player';

const EXERCISE = 'tests/browser/short-walk.json';
const TICKS_PER_S = 20;
/** A run is ended when it is about this old, so that beginnings and ends are killed as well as middles. */
const END_AFTER_S = 12;
/** The longest time from a start or an end to the kill, milliseconds. */
const LONGEST_MS = 4_000;
const LONGEST_AFTER_END_MS = 400;

/** What one start of the browser found of the run that was killed before it. */
export type Round = {
  readonly killedWhile: 'playing' | 'ending';
  /** Seconds that the page showed last, and seconds found again; a finished run is found whole. */
  readonly shownS: number;
  readonly foundS: number | 'finished' | 'nothing';
};

/** Seconds of the run that are gone; a finished run is gone whole or not at all. */
export const lostS = ({ shownS, foundS }: Round): number =>
  foundS === 'finished' ? 0 : foundS === 'nothing' ? shownS : Math.max(0, shownS - foundS);

/** What the store of the page holds, read past the program. */
const LOOK = `new Promise((resolve, reject) => {
  const opening = indexedDB.open('faintward');
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const db = opening.result;
    if (!db.objectStoreNames.contains('finished')) { db.close(); resolve({ finished: 0, ticks: 0 }); return; }
    const go = db.transaction(['unfinished', 'finished']);
    const [count, parts] = [go.objectStore('finished').count(), go.objectStore('unfinished').getAll()];
    go.oncomplete = () => { db.close(); resolve({ finished: count.result, ticks: Math.max(0, ...parts.result.map(({ tick }) => tick)) }); };
  };
})`;

/**
 * Plays runs in a browser whose processes are killed at random moments, and tells what the next start finds.
 * @param times how often it is killed
 */
export async function killRounds(times: number, seed: string, told: (round: Round) => void = () => {}): Promise<readonly Round[]> {
  const random = randomFor(seed, 'test');
  const profile = mkdtempSync(join(tmpdir(), 'faintward-kills-'));
  const site = await openBuiltPage();
  const rounds: Round[] = [];
  let before: { readonly shownS: number; readonly killedWhile: Round['killedWhile']; readonly finished: number } | null = null;
  try {
    for (let i = 0; i <= times; i++) {
      const { page, kill } = await start(profile, site.url);
      const { finished, ticks } = (await page.evaluate(LOOK)) as { finished: number; ticks: number };
      if (before) {
        const foundS = finished > before.finished ? 'finished' : ticks > 0 ? ticks / TICKS_PER_S : 'nothing';
        const round = { killedWhile: before.killedWhile, shownS: before.shownS, foundS } as const;
        rounds.push(round);
        told(round);
      }
      if (i === times) {
        await kill();
        break;
      }
      const goOn = page.getByRole('button', { name: /Go on with/ });
      if (ticks > 0) {
        await goOn.click();
        await opened(page);
      } else await playerAt(page).openExercise(EXERCISE);
      // a run that had ended takes a moment to come to its debrief
      if (ticks > END_AFTER_S * TICKS_PER_S) await page.waitForTimeout(400);
      if (await page.locator('.rating').count()) {
        // it had ended when it was killed: going on with it is its debrief
        before = { shownS: 0, killedWhile: 'ending', finished };
        await kill();
        continue;
      }
      const paused = page.getByRole('button', { name: 'Go on', exact: true });
      if (ticks > 0) await paused.last().click();
      if (ticks > END_AFTER_S * TICKS_PER_S) {
        await page.getByRole('button', { name: 'Pause', exact: true }).click();
        const shownS = await secondsShown(page);
        await page.getByRole('button', { name: 'Give up and see the debrief' }).click();
        await page.waitForTimeout(random() * LONGEST_AFTER_END_MS);
        await kill();
        before = { shownS, killedWhile: 'ending', finished };
      } else {
        await page.keyboard.down('ArrowRight');
        await page.waitForTimeout(random() * LONGEST_MS);
        const shownS = await secondsShown(page);
        await kill();
        before = { shownS, killedWhile: 'playing', finished };
      }
    }
  } finally {
    await site.close();
    rmSync(profile, { recursive: true, force: true });
  }
  return rounds;
}

/** @throws Error that tells what the page shows where the unfinished run doesn't open */
async function opened(page: Page): Promise<void> {
  try {
    await page.locator('.map-window canvas, .rating').first().waitFor({ timeout: 60_000 });
  } catch {
    throw new Error(`an unfinished run did not open; the page shows: ${(await page.locator('body').ariaSnapshot()).slice(0, 600)}`);
  }
}

async function secondsShown(page: Page): Promise<number> {
  const text = (await page.locator('.bar-number').first().textContent({ timeout: 5_000 })) ?? '';
  const [minutes, seconds] = text
    .replace(/[^0-9:]/g, '')
    .split(':')
    .map(Number);
  return 60 * (minutes ?? 0) + (seconds ?? 0);
}

/** A browser of our own with a profile that outlives it. */
async function start(profile: string, url: string): Promise<{ readonly page: Page; readonly kill: () => Promise<void> }> {
  const flags = ['--headless', '--no-sandbox', '--disable-gpu', '--remote-debugging-port=0', '--no-first-run', '--lang=en-US'];
  const child = spawn(await browserPath(), [...flags, `--user-data-dir=${profile}`, 'about:blank'], {
    detached: true,
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  const browser = await chromium.connectOverCDP(await debuggerOf(child));
  const context = browser.contexts()[0]!;
  const page = context.pages()[0] ?? (await context.newPage());
  await page.goto(url);
  await page.getByRole('heading', { name: 'Faintward' }).waitFor();
  await page.waitForTimeout(150);
  return {
    page,
    kill: async () => {
      const gone = new Promise((done) => child.once('exit', done));
      process.kill(-child.pid!, 'SIGKILL');
      await gone;
      await browser.close().catch(() => {});
    },
  };
}

function debuggerOf(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    child.once('exit', (code) => reject(new Error(`the browser ended with ${code}: ${said}`)));
    child.stderr!.on('data', (piece: Buffer) => {
      said += piece.toString();
      const found = /ws:\/\/\S+/.exec(said);
      if (found) resolve(found[0]);
    });
  });
}
