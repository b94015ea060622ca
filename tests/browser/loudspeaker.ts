import type { Page } from 'playwright-core';

/** Puts an ear beside the loudspeaker: the last 0.68 s that were joined to the destination. */
export const EAR_AT_LOUDSPEAKER = `{
  const join = AudioNode.prototype.connect;
  AudioNode.prototype.connect = function (to, ...rest) {
    if (to instanceof AudioDestinationNode && !window.ear) {
      window.ear = this.context.createAnalyser();
      window.ear.fftSize = 32768;
      join.call(this, window.ear);
    }
    return join.call(this, to, ...rest);
  };
}`;

/** The loudest 10 ms of the last 0.68 s: its level, dB re full scale, and how often it crosses zero. */
const LOUDEST = `(() => {
  const samples = new Float32Array(window.ear.fftSize);
  window.ear.getFloatTimeDomainData(samples);
  const length = 480;
  let best = { power: 0, crossings: 0 };
  for (let from = 0; from + length <= samples.length; from += 120) {
    let [power, crossings] = [0, 0];
    for (let i = from; i < from + length; i++) {
      power += samples[i] ** 2;
      if (i > from && samples[i] < 0 !== samples[i - 1] < 0) crossings++;
    }
    if (power > best.power) best = { power, crossings };
  }
  return { db: 10 * Math.log10(best.power / length + 1e-15), crossings: best.crossings };
})()`;

export type Loudest = { readonly db: number; readonly crossings: number };

/** The present beep as it leaves the page: what was set before has faded from the window, and one beep at least is in it. */
export async function loudestBeep(page: Page): Promise<Loudest> {
  await page.waitForTimeout(800);
  const first = (await page.evaluate(LOUDEST)) as Loudest;
  await page.waitForTimeout(400);
  const second = (await page.evaluate(LOUDEST)) as Loudest;
  return first.db > second.db ? first : second;
}
