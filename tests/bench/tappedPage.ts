import { readFileSync, writeFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { playerAt } from '../browser/player';

/** What came out of the page's sound: every sample that left it, the hand's movements, and how the two clocks lay. */
export type Tapped = {
  readonly firstFrame: number;
  readonly samples: Float32Array;
  readonly hands: readonly Hand[];
  readonly clocks: readonly ClockPair[];
};
/** A key or pointer event, milliseconds of the page's clock when the browser had it. */
export type Hand = { readonly what: string; readonly atMs: number };
/** The sample that the loudspeaker plays at a moment, as the browser itself says, and the one that is rendered then. */
export type ClockPair = { readonly atMs: number; readonly playedS: number; readonly renderedS: number };

/** The worklet that listens at the very end of the page's sound. It is served beside the page, whose policy allows nothing else. */
const EAR_MODULE = `
class Ear extends AudioWorkletProcessor {
  constructor() { super(); this.kept = new Float32Array(2048); this.at = 0; }
  process([[input]]) {
    if (this.at === 0 || currentFrame !== this.from + this.at) [this.from, this.at] = [currentFrame, 0]; // a gap begins anew
    if (input) this.kept.set(input, this.at); else this.kept.fill(0, this.at, this.at + 128);
    this.at += 128;
    if (this.at === this.kept.length) { this.port.postMessage({ from: this.from, samples: this.kept.slice() }); this.at = 0; }
    return true;
  }
}
registerProcessor('ear', Ear);`;

const EAR = `{
  const workletOf = Object.getOwnPropertyDescriptor(BaseAudioContext.prototype, 'audioWorklet').get;
  const tap = window.tap = { blocks: [], hands: [], clocks: [], context: null };
  const join = AudioNode.prototype.connect;
  AudioNode.prototype.connect = function (to, ...rest) {
    if (to instanceof AudioDestinationNode && !tap.context) {
      tap.context = this.context;
      workletOf.call(this.context).addModule('/ear.js').then(() => {
        const ear = new AudioWorkletNode(this.context, 'ear');
        ear.port.onmessage = ({ data }) => tap.blocks.push(data);
        join.call(this, ear);
        join.call(ear, this.context.destination);
      });
      setInterval(() => {
        const { contextTime, performanceTime } = this.context.getOutputTimestamp();
        tap.clocks.push({ atMs: performanceTime, playedS: contextTime, renderedS: this.context.currentTime });
      }, 20);
    }
    return join.call(this, to, ...rest);
  };
  for (const type of ['keydown', 'pointerdown'])
    addEventListener(type, (event) => tap.hands.push({ what: event.key ?? type, atMs: event.timeStamp }), true);
}`;
const WITHOUT_WORKLET = 'Object.defineProperty(BaseAudioContext.prototype, "audioWorklet", { get: () => undefined });';

/** Opens an exercise in the built page with an ear at its output, by keys as a person would. */
export async function openTapped(browser: Browser, url: string, scenario: object, worklet: boolean): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1366, height: 768 }, locale: 'en-US' });
  writeFileSync('node_modules/.cache/built-page/ear.js', EAR_MODULE);
  await page.addInitScript(EAR + (worklet ? '' : WITHOUT_WORKLET));
  await page.goto(url);
  await playerAt(page).openExercise({
    name: 'bench.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(scenario)),
  });
  await page.waitForTimeout(1_500);
  return page;
}

/** Everything the ear has heard so far. */
export async function takeTapped(page: Page): Promise<Tapped> {
  const told = await page.evaluate(() => {
    type Block = { readonly from: number; readonly samples: Float32Array };
    const { blocks, hands, clocks } = (window as unknown as { tap: { blocks: Block[]; hands: unknown; clocks: unknown } }).tap;
    const firstFrame = blocks[0]!.from;
    const all = new Float32Array(blocks.at(-1)!.from + 2_048 - firstFrame);
    for (const { from, samples } of blocks) all.set(samples, from - firstFrame);
    const bytes = new Uint8Array(all.buffer);
    let text = '';
    for (let i = 0; i < bytes.length; i += 32_768) text += String.fromCharCode(...bytes.subarray(i, i + 32_768));
    return { firstFrame, base64: btoa(text), hands, clocks };
  });
  const bytes = Buffer.from(told.base64, 'base64');
  return {
    firstFrame: told.firstFrame,
    samples: new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length)),
    hands: told.hands as readonly Hand[],
    clocks: told.clocks as readonly ClockPair[],
  };
}

/** The exercise of the browser tests with other tag and kit. */
export function shortWalk(tag: object, kit: object): object {
  const plain = JSON.parse(readFileSync('tests/browser/short-walk.json', 'utf8'));
  return { ...plain, tags: [{ ...plain.tags[0], ...tag }], kit: { ...plain.kit, ...kit }, limits: { ...plain.limits, timeS: 3_600 } };
}
