import { type Heard, heardAt, PULSE_MS } from '../../../src/core/listening/air';
import type { Demonstration } from '../../../src/core/listening/demonstration';
import { changed } from '../../../src/core/listening/demonstrationDials';
import type { Settings } from '../../../src/core/listening/settings';
import { makeVoice } from '../../../src/core/voice/pulse';

const RATE = 48_000;
const LENGTH = (RATE * PULSE_MS) / 1_000;

const SILENT = -999;

const rms = (samples: Float32Array): number => Math.sqrt(samples.reduce((sum, x) => sum + x * x, 0) / samples.length);

function sampled(levelDb: number, pitchHz: number): Float32Array {
  const out = new Float32Array(LENGTH);
  makeVoice(RATE).render(out, 0, [{ atSample: 0, lengthSamples: LENGTH, pitchHz, levelDb }], {
    noiseDb: SILENT,
    buzzDb: SILENT,
    mainsHz: 50,
  });
  return out;
}

const CEILING = rms(sampled(0, 1_000));

export type Sampled = {
  readonly heard: Heard;
  /** Level of the beep's own samples, dB re a beep at the limiter's ceiling. */
  readonly beepDb: number;
  readonly zeroCrossings: number;
};

/** One beep of a demonstration as samples of the program's voice, measured. */
export function sampledBeep(demonstration: Demonstration, by: Partial<Settings>): Sampled {
  const settings = changed(demonstration, demonstration.start, by);
  const heard = heardAt(demonstration.air(settings), settings, settings.headingDeg);
  const beep = sampled(heard.levelDb, heard.pitchHz);
  let zeroCrossings = 0;
  for (let i = 1; i < beep.length; i++) if (beep[i - 1]! < 0 !== beep[i]! < 0) zeroCrossings++;
  return {
    heard,
    beepDb: 20 * Math.log10(rms(beep) / CEILING),
    zeroCrossings,
  };
}
