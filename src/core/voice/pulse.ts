import { makePassband, passbandNoiseGain } from './passband';

/** A pulse to sound: when in samples since the sound's zero, how long, its note and its level out of the receiver. */
export type Sounded = {
  readonly atSample: number;
  readonly lengthSamples: number;
  readonly pitchHz: number;
  /** dB re the limiter's ceiling. */
  readonly levelDb: number;
  /** Knobs and antenna that were turned since, in time order: the pulse follows them while it sounds. */
  readonly changes?: readonly LevelChange[];
};
/** From this sample on the pulse glides to another level. */
export type LevelChange = { readonly atSample: number; readonly levelDb: number };

/** What sounds between the pulses: the receiver's noise and a line's buzz, dB re the limiter's ceiling. */
export type VoiceScene = { readonly noiseDb: number; readonly buzzDb: number; readonly mainsHz: number };

export type Voice = {
  /**
   * Fills `out` with samples from `firstSample` on. Blocks follow one another without gaps; the same calls give the same
   * samples. All lie within ±0.891 (-1 dBFS).
   */
  readonly render: (out: Float32Array, firstSample: number, pulses: readonly Sounded[], scene: VoiceScene) => void;
  /** What the voice remembers after the last block, for `recall`. */
  readonly memory: () => VoiceMemory;
  /** Goes on from where a memory was taken. */
  readonly recall: (memory: VoiceMemory) => void;
};
export type VoiceMemory = {
  readonly noise: Float64Array;
  readonly buzz: Float64Array;
  readonly noiseNow: number;
  readonly buzzNow: number;
  readonly started: boolean;
};

/** -1 dBFS. */
export const PEAK = 10 ** (-1 / 20);
/** Amplitude of a pulse at the limiter's ceiling: room is left under the peak for noise and a second tag. */
const CEILING_AMPLITUDE = 0.5;
/** Raised-cosine edges, so that a pulse doesn't click. */
export const EDGE_S = 0.005;
/** A knob's change reaches noise and pulse within this time constant: short against the ear, long against a click. */
const GLIDE_S = 0.004;

const amplitude = (levelDb: number): number => (levelDb < -150 ? 0 : CEILING_AMPLITUDE * 10 ** (levelDb / 20));

/** The one sound function of the program: the worklet, the buffers of browsers without one, and the command line call it. */
export function makeVoice(sampleRateHz: number): Voice {
  const noiseFilter = makePassband(sampleRateHz);
  const buzzFilter = makePassband(sampleRateHz);
  // White noise of a uniform draw in [-1, 1) has root-mean-square 1/sqrt 3; a pulse of amplitude a has a/sqrt 2.
  const noiseScale = Math.sqrt(3) / (passbandNoiseGain(sampleRateHz) * Math.SQRT2);
  const glide = 1 - Math.exp(-1 / (GLIDE_S * sampleRateHz));
  let noiseNow = 0;
  let buzzNow = 0;
  let started = false;
  return {
    render(out, firstSample, pulses, scene) {
      const noiseTo = amplitude(scene.noiseDb) * noiseScale;
      const buzzTo = amplitude(scene.buzzDb) * noiseScale;
      if (!started) [noiseNow, buzzNow, started] = [noiseTo, buzzTo, true];
      for (let i = 0; i < out.length; i++) {
        const sample = firstSample + i;
        noiseNow += (noiseTo - noiseNow) * glide;
        buzzNow += (buzzTo - buzzNow) * glide;
        let value = noiseFilter.pass(whiteAt(sample, 1)) * noiseNow;
        if (buzzNow > 0) value += buzzFilter.pass(whiteAt(sample, 2)) * buzzNow * buzzEnvelope(sample / sampleRateHz, scene.mainsHz);
        for (const pulse of pulses) value += pulseAt(pulse, sample, sampleRateHz);
        out[i] = underPeak(value);
      }
    },
    memory: () => ({ noise: noiseFilter.memory.slice(), buzz: buzzFilter.memory.slice(), noiseNow, buzzNow, started }),
    recall(memory) {
      noiseFilter.memory.set(memory.noise);
      buzzFilter.memory.set(memory.buzz);
      ({ noiseNow, buzzNow, started } = memory);
    },
  };
}

/** Sample of one pulse; its phase starts at its own beginning, so a pulse sounds the same wherever a block begins. */
function pulseAt(pulse: Sounded, sample: number, sampleRateHz: number): number {
  const { atSample, lengthSamples, pitchHz } = pulse;
  const into = sample - atSample;
  if (into < 0 || into >= lengthSamples) return 0;
  const edge = Math.min(EDGE_S * sampleRateHz, lengthSamples / 2);
  const nearest = Math.min(into + 0.5, lengthSamples - into - 0.5);
  const shape = nearest >= edge ? 1 : 0.5 - 0.5 * Math.cos((Math.PI * nearest) / edge);
  return amplitudeAt(pulse, sample, GLIDE_S * sampleRateHz) * shape * Math.sin((2 * Math.PI * pitchHz * into) / sampleRateHz);
}

/** Worked out anew for every sample, so that it is the same wherever a block begins. */
function amplitudeAt({ levelDb, changes = [] }: Sounded, sample: number, glideSamples: number): number {
  let now = amplitude(levelDb);
  for (let i = 0; i < changes.length && changes[i]!.atSample < sample; i++) {
    const to = amplitude(changes[i]!.levelDb);
    const until = Math.min(sample, changes[i + 1]?.atSample ?? sample);
    now = to + (now - to) * Math.exp((changes[i]!.atSample - until) / glideSamples);
  }
  return now;
}

/** Bursts at both peaks of the mains wave, mean square 1. */
const buzzEnvelope = (timeS: number, mainsHz: number): number => {
  const swing = Math.sin(2 * Math.PI * mainsHz * timeS);
  return swing ** 8 * BURST_SCALE;
};
/** Mean of sin^16 is 6435/32768. */
const BURST_SCALE = Math.sqrt(32768 / 6435);

/** Uniform noise in [-1, 1) that belongs to the sample's number: an integer hash, the same in every engine. */
function whiteAt(sample: number, stream: number): number {
  let h = Math.imul(sample ^ Math.imul(stream, 0x9e3779b1), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  h = Math.imul(h ^ (h >>> 16), 0x27d4eb2f);
  return ((h ^ (h >>> 15)) >>> 0) / 2147483648 - 1;
}

/** Straight to 0.7, then bent so that it never passes -1 dBFS. */
function underPeak(value: number): number {
  const size = Math.abs(value);
  if (size <= 0.7) return value;
  const over = size - 0.7;
  const room = PEAK - 0.7;
  return Math.sign(value) * (0.7 + (room * over) / (over + room));
}
