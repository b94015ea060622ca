import type { Browser, Page } from 'playwright-core';
import { openBuiltPage } from '../browser/builtPage';
import { openChromium } from '../browser/chromium';
import type { Figure } from './figure';
import { lostMs, noiseTrack, noteTrack, outputMs, p95, pulseLatenciesMs, stepLatenciesMs } from './soundReached';
import { openTapped, shortWalk, type Tapped, takeTapped } from './tappedPage';

/**
 * From the hand to the loudspeaker in a real browser: from the time stamp that the browser gives a key or pointer event to the moment at
 * which, by the browser's own account (`getOutputTimestamp`), the loudspeaker plays the first sample that is half of the way to the new
 * level. Included: waiting of the event for a busy page, the program, the voice's glide, the browser's output buffers and what it knows
 * of the device. Left out: keyboard and mouse themselves, and a device's delay of which the browser knows nothing.
 */
const GOAL_MS = 50;
const MOVEMENTS = 40;

/** A strong tag close by, its note at 1 kHz, pulses as long and as frequent as they come; so little gain that noise lies 45 dB under it. */
const PULSES = shortWalk({ pulseMs: 60, pulsesPerMinute: 120 }, { startGainDb: 42 });
/** Full noise, and a tag far off the dial. */
const NOISE = shortWalk({ eirpDbm: -40, at: [900, 900], pulsesPerMinute: 20 }, { startGainDb: 75, startOffsetHz: 3_000 });

type Movement = {
  readonly name: string;
  /** The events that count, by the key or the pointer's name. */
  readonly event: RegExp;
  /** What a pulse has to change by, dB, to be another. */
  readonly byDb: number;
  readonly make: (page: Page, i: number, box: Boxes) => Promise<void>;
};
type Box = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
type Boxes = { readonly gain: Box; readonly dial: Box };

const GAIN_BY_KEY: Movement = {
  name: 'gain by key',
  event: /Arrow/,
  byDb: 2.5,
  make: (page, i) => page.keyboard.press(i % 2 === 0 ? 'Shift+ArrowDown' : 'Shift+ArrowUp'),
};
const GAIN_BY_POINTER: Movement = {
  name: 'gain by pointer',
  event: /pointer/,
  byDb: 2.5,
  make: (page, i, { gain }) => page.mouse.click(gain.x + gain.width * (i % 2 === 0 ? 0.7 : 0.85), gain.y + gain.height / 2),
};
/** Straight to the tag, and half a right angle beside it. */
const TURN_BY_POINTER: Movement = {
  name: 'turn by pointer',
  event: /pointer/,
  byDb: 2,
  make: (page, i, { dial }) => page.mouse.click(dial.x + dial.width * (i % 2 ? 0.5 : 0.72), dial.y + dial.height * (i % 2 ? 0.1 : 0.28)),
};
/** A held key turns the antenna at 45 degrees a second: a fifth of a decibel is reached after about a degree, which is counted too. */
const TURN_BY_KEY: Movement = {
  name: 'turn by held key',
  event: /Arrow/,
  byDb: 0.2,
  make: async (page, i) => {
    await page.keyboard.down(i % 2 === 0 ? 'ArrowRight' : 'ArrowLeft');
    await page.waitForTimeout(200);
    await page.keyboard.up(i % 2 === 0 ? 'ArrowRight' : 'ArrowLeft');
  },
};

/** Makes the movements one after another, each when `wait` lets it. @returns when they began, by the page's clock */
async function move(page: Page, movement: Movement, wait: (i: number) => Promise<void>): Promise<number> {
  const boxOf = async (name: string) => (await page.getByRole('slider', { name }).boundingBox())!;
  const boxes = { gain: await boxOf('Gain'), dial: await boxOf('Antenna heading') };
  const begunMs = await page.evaluate(() => performance.now());
  for (let i = 0; i < MOVEMENTS; i++) {
    await wait(i);
    await movement.make(page, i, boxes);
  }
  await page.waitForTimeout(600);
  return begunMs;
}

type Moved = { readonly movement: Movement; readonly begunMs: number };
const handsOf = ({ hands }: Tapped, { movement, begunMs }: Moved, nextMs = Number.POSITIVE_INFINITY): readonly number[] =>
  hands.filter(({ what, atMs }) => movement.event.test(what) && atMs > begunMs && atMs < nextMs).map(({ atMs }) => atMs);

async function noiseFigures(browser: Browser, url: string, worklet: boolean): Promise<readonly Figure[]> {
  const page = await openTapped(browser, url, NOISE, worklet);
  const moved: Moved[] = [];
  for (const movement of [GAIN_BY_KEY, GAIN_BY_POINTER]) {
    moved.push({ movement, begunMs: await move(page, movement, (i) => page.waitForTimeout(250 + ((i * 37) % 90))) });
  }
  const tapped = await takeTapped(page);
  await page.close();
  const track = noiseTrack(tapped);
  const figures = moved.map((one, i) => {
    const latencies = stepLatenciesMs(tapped, track, handsOf(tapped, one, moved[i + 1]?.begunMs));
    return figure(`${one.movement.name} to noise`, worklet, latencies);
  });
  return [
    ...figures,
    { name: `rendered before it is played, ${path(worklet)}`, unit: 'ms', value: outputMs(tapped), goal: GOAL_MS },
    { name: `sound that came too late, ${path(worklet)}`, unit: 'ms/min', value: lostMs(tapped), goal: 10 },
  ];
}

/**
 * Movements are timed so that many meet a pulse; those that meet none still tell the last sample that sounded as before. A whole pulse
 * lies between two of them: one that changed on its way would be no measure of how it sounded before.
 */
async function pulseFigures(browser: Browser, url: string, worklet: boolean): Promise<readonly Figure[]> {
  const page = await openTapped(browser, url, PULSES, worklet);
  const moved: Moved[] = [];
  for (const movement of [TURN_BY_POINTER, GAIN_BY_KEY, TURN_BY_KEY]) {
    const wait = async (i: number) => {
      await page.waitForTimeout(700);
      await page.evaluate(untilNextPulse, ((i * 17) % 40) - 15);
    };
    moved.push({ movement, begunMs: await move(page, movement, wait) });
  }
  const tapped = await takeTapped(page);
  await page.close();
  const track = noteTrack(tapped);
  return moved.flatMap((one, i) => {
    const reached = pulseLatenciesMs(tapped, track, handsOf(tapped, one, moved[i + 1]?.begunMs), one.movement.byDb);
    const seen = reached.flatMap(({ seenMs }) => (seenMs === null ? [] : [seenMs]));
    const stale = reached.map(({ staleMs }) => staleMs);
    return [figure(`${one.movement.name} to pulse`, worklet, seen), figure(`${one.movement.name}, last pulse as before`, worklet, stale)];
  });
}

/** In the page: waits until `offMs` after the next pulse begins to sound. */
async function untilNextPulse(offMs: number): Promise<void> {
  type Tap = { blocks: { from: number; samples: Float32Array }[]; clocks: { atMs: number; playedS: number }[] };
  const { blocks, clocks } = (window as unknown as { tap: Tap }).tap;
  let [onset, quiet] = [0, 0];
  for (const { from, samples } of blocks.slice(-40)) {
    for (let i = 0; i < samples.length; i++) {
      if (Math.abs(samples[i]!) < 1e-4) quiet++;
      else {
        if (quiet > 1_000) onset = from + i;
        quiet = 0;
      }
    }
  }
  const { atMs, playedS } = clocks.at(-1)!;
  const onsetMs = atMs + (onset / 48_000 - playedS) * 1_000;
  const dueMs = onsetMs + offMs + 500 * Math.ceil((performance.now() - onsetMs - offMs) / 500);
  await new Promise((done) => setTimeout(done, dueMs - performance.now()));
}

const path = (worklet: boolean): string => (worklet ? 'worklet' : 'plain http');

const figure = (name: string, worklet: boolean, latencies: readonly number[]): Figure => ({
  name: `p95 of ${latencies.length}: ${name}, ${path(worklet)}`,
  unit: 'ms',
  value: p95(latencies),
  goal: GOAL_MS,
});

export async function figures(): Promise<readonly Figure[]> {
  const [site, browser] = await Promise.all([openBuiltPage(), openChromium()]);
  try {
    const told: Figure[] = [];
    for (const worklet of [true, false]) {
      told.push(...(await noiseFigures(browser, site.url, worklet)), ...(await pulseFigures(browser, site.url, worklet)));
    }
    return told;
  } finally {
    await browser.close();
    await site.close();
  }
}

if (process.argv[1]?.endsWith('soundLatency.ts')) {
  for (const { name, unit, value, goal } of await figures()) console.log(`${name}: ${value.toFixed(1)} ${unit} (goal ${goal})`);
}
