import type { Browser, CDPSession } from 'playwright-core';
import { DEMONSTRATIONS } from '../../src/core/listening/catalogue';
import { openBuiltPage } from '../browser/builtPage';
import { openChromium } from '../browser/chromium';

/** A slow machine: this one at a quarter of its speed. */
const SLOWER = 4;
const GOAL_MS = 1_500;

/** Notes in the page when the room stands with its gesture asked for, and when the first beep's samples reach the loudspeaker. */
const WATCH = `{
  window.seen = {};
  const stands = () => document.querySelector('.room-ring') && document.querySelector('.room-gate');
  const watch = new MutationObserver(() => {
    if (!stands()) return;
    watch.disconnect();
    requestAnimationFrame(() => setTimeout(() => { window.seen.readyMs = performance.now(); }));
  });
  watch.observe(document, { childList: true, subtree: true });
  addEventListener('pointerdown', (event) => { window.seen.gestureMs ??= event.timeStamp; }, true);
  const join = AudioNode.prototype.connect;
  AudioNode.prototype.connect = function (to, ...rest) {
    if (to instanceof AudioDestinationNode && !window.ear) {
      window.ear = this.context.createAnalyser();
      window.ear.fftSize = 1024;
      join.call(this, window.ear);
      const samples = new Float32Array(1024);
      const timer = setInterval(() => {
        window.ear.getFloatTimeDomainData(samples);
        const sounds = samples.some((s) => Math.abs(s) > 1e-4);
        if (!sounds) return;
        clearInterval(timer);
        window.seen.soundMs = performance.now();
      }, 5);
    }
    return join.call(this, to, ...rest);
  };
}`;

type Seen = { readonly readyMs: number; readonly gestureMs: number; readonly soundMs: number };

const scriptMs = async (devtools: CDPSession): Promise<number> => {
  const { metrics } = await devtools.send('Performance.getMetrics');
  return 1000 * (metrics.find(({ name }) => name === 'ScriptDuration')?.value ?? 0);
};

async function measure(browser: Browser, url: string, slower: number): Promise<{ readonly seen: Seen; readonly scriptMs: number }> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 720 }, locale: 'en-US' });
  const page = await context.newPage();
  await page.addInitScript(WATCH);
  // Asked from outside now and then: a poll inside the page would cost what is measured.
  const noted = async (what: keyof Seen) => {
    while (!(await page.evaluate(`window.seen.${what}`))) await page.waitForTimeout(60);
  };
  const devtools = await context.newCDPSession(page);
  await devtools.send('Performance.enable');
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: slower });
  await page.goto(url);
  await noted('readyMs');
  await page.locator('.room-gate').click();
  await noted('soundMs');
  const seen = (await page.evaluate('window.seen')) as Seen;
  const script = await scriptMs(devtools);
  await context.close();
  return { seen, scriptMs: script };
}

/** Prints, for every demonstration opened cold by its address, how long the room takes on a slow machine. Run it by itself: `tsx tests/bench/listeningRoom.ts`. */
async function printRoom(): Promise<void> {
  const [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  const only = process.argv.slice(2);
  console.log(`Cold start at 1/${SLOWER} speed; goal ${GOAL_MS} ms for each of the two`);
  console.log('demonstration          to the room   gesture to sound   script at full speed');
  for (const { id } of DEMONSTRATIONS.filter((one) => only.length === 0 || only.includes(one.id))) {
    const address = `${site.url}#/listen/${id}`;
    const slow = await measure(browser, address, SLOWER);
    const full = await measure(browser, address, 1);
    const { readyMs, gestureMs, soundMs } = slow.seen;
    const over = readyMs > GOAL_MS || soundMs - gestureMs > GOAL_MS ? '   over' : '';
    console.log(
      `${id.padEnd(20)} ${readyMs.toFixed(0).padStart(10)} ms ${(soundMs - gestureMs).toFixed(0).padStart(15)} ms ${full.scriptMs.toFixed(0).padStart(19)} ms${over}`,
    );
  }
  await browser.close();
  await site.close();
}

await printRoom();
