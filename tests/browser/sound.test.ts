import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBuiltPage } from './builtPage';
import { openChromium } from './chromium';
import { EAR_AT_LOUDSPEAKER } from './loudspeaker';
import { playerAt } from './player';

let browser: Browser;
let site: Awaited<ReturnType<typeof openBuiltPage>>;

beforeAll(async () => {
  [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** Largest and root-mean-square sample of the last 0.68 s. */
const LISTEN = `(() => {
  const samples = new Float32Array(window.ear.fftSize);
  window.ear.getFloatTimeDomainData(samples);
  let [peak, sum] = [0, 0];
  for (const s of samples) { peak = Math.max(peak, Math.abs(s)); sum += s * s; }
  return { peak, rms: Math.sqrt(sum / samples.length) };
})()`;

test.each([
  ['with an audio worklet', ''],
  ['without one, as over plain http', 'Object.defineProperty(BaseAudioContext.prototype, "audioWorklet", { get: () => undefined });'],
])(
  '%s noise and beeps come out, never over a quarter of full scale at first and never over -1 dBFS, and a pause is silent',
  async (_, without) => {
    const page = await browser.newPage({ locale: 'en-US' });
    await page.addInitScript(without + EAR_AT_LOUDSPEAKER);
    await page.goto(site.url);
    const player = playerAt(page);
    await player.openExercise('tests/browser/short-walk.json');
    await player.gainTo(80);
    await player.wait(1_500);
    const heard: { peak: number; rms: number }[] = [];
    for (let i = 0; i < 6; i++) {
      heard.push(await page.evaluate(LISTEN));
      await player.wait(400);
    }
    const loudest = Math.max(...heard.map(({ peak }) => peak));
    expect(loudest).toBeGreaterThan(0.02);
    expect(loudest).toBeLessThanOrEqual(0.25);
    expect(Math.min(...heard.map(({ rms }) => rms))).toBeGreaterThan(0);
    await player.gainTo(90);
    for (let i = 0; i < 6; i++) await player.press('*'); // 3 dB each: to the top and no further
    await player.wait(700);
    const flatOut: number[] = [];
    for (let i = 0; i < 6; i++) {
      flatOut.push(((await page.evaluate(LISTEN)) as { peak: number }).peak);
      await player.wait(300);
    }
    expect(Math.max(...flatOut)).toBeGreaterThan(0.25);
    expect(Math.max(...flatOut)).toBeLessThanOrEqual(10 ** (-1 / 20));
    await player.press('p');
    await player.wait(1_500);
    expect(((await page.evaluate(LISTEN)) as { peak: number }).peak).toBeLessThan(1e-4);
    await page.close();
  },
);
