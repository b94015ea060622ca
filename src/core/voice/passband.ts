import { PASSBAND_HZ } from '../receiver/tuning';

/** Second-order sections of the receiver's audio band: two high-pass, two low-pass, maximally flat together. */
type Section = { readonly b0: number; readonly b1: number; readonly b2: number; readonly a1: number; readonly a2: number };

/** Pole qualities of a fourth-order Butterworth filter. */
const QUALITIES = [0.5411961, 1.306563];

/** Bilinear-transform biquads for a low-pass or high-pass corner. Source: the usual bilinear design, derived here. */
function section(kind: 'low' | 'high', cornerHz: number, quality: number, sampleRateHz: number): Section {
  const w = Math.tan((Math.PI * cornerHz) / sampleRateHz);
  const norm = 1 / (1 + w / quality + w * w);
  const a1 = 2 * (w * w - 1) * norm;
  const a2 = (1 - w / quality + w * w) * norm;
  if (kind === 'low') return { b0: w * w * norm, b1: 2 * w * w * norm, b2: w * w * norm, a1, a2 };
  return { b0: norm, b1: -2 * norm, b2: norm, a1, a2 };
}

/** One sample in, one out; what it remembers of the samples before lies open, so that a rendering can be taken up again from any place. */
export type Passband = { readonly pass: (sample: number) => number; readonly memory: Float64Array };

export function makePassband(sampleRateHz: number): Passband {
  const sections = [
    ...QUALITIES.map((quality) => section('high', PASSBAND_HZ.from, quality, sampleRateHz)),
    ...QUALITIES.map((quality) => section('low', PASSBAND_HZ.to, quality, sampleRateHz)),
  ];
  const weights = Float64Array.from(sections.flatMap(({ b0, b1, b2, a1, a2 }) => [b0, b1, b2, a1, a2]));
  const memory = new Float64Array(sections.length * 2);
  const pass = (sample: number): number => {
    let value = sample;
    for (let w = 0, m = 0; m < memory.length; w += 5, m += 2) {
      const out = weights[w]! * value + memory[m]!;
      memory[m] = weights[w + 1]! * value - weights[w + 3]! * out + memory[m + 1]!;
      memory[m + 1] = weights[w + 2]! * value - weights[w + 4]! * out;
      value = out;
    }
    return value;
  };
  return { pass, memory };
}

/** Root-mean-square output for white noise of root-mean-square 1: the square root of the impulse response's energy. */
export function passbandNoiseGain(sampleRateHz: number): number {
  const { pass } = makePassband(sampleRateHz);
  let energy = 0;
  for (let i = 0; i < sampleRateHz / 5; i++) energy += pass(i === 0 ? 1 : 0) ** 2;
  return Math.sqrt(energy);
}
