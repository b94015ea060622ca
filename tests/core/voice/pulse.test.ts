import { expect, test } from 'vitest';
import { makeVoice, PEAK, type Sounded, type VoiceScene } from '../../../src/core/voice/pulse';
import { wavBytes } from '../../../src/core/voice/wav';

const RATE = 48_000;
const QUIET: VoiceScene = { noiseDb: -200, buzzDb: -200, mainsHz: 50 };
const beep = (over: Partial<Sounded> = {}): Sounded => ({ atSample: 4_800, lengthSamples: 960, pitchHz: 1_000, levelDb: -20, ...over });

function rendered(pulses: readonly Sounded[], scene = QUIET, samples = 14_400, block = samples): Float32Array {
  const voice = makeVoice(RATE);
  const out = new Float32Array(samples);
  for (let at = 0; at < samples; at += block) voice.render(out.subarray(at, at + block), at, pulses, scene);
  return out;
}
const rms = (part: Float32Array): number => Math.sqrt(part.reduce((sum, x) => sum + x * x, 0) / part.length);

test('a pulse sounds exactly from its first to its last sample', () => {
  const out = rendered([beep()]);
  const sounding = [...out.keys()].filter((i) => out[i] !== 0);
  expect(sounding[0]!).toBeGreaterThanOrEqual(4_800);
  expect(sounding[0]!).toBeLessThan(4_810);
  expect(sounding.at(-1)!).toBeLessThan(4_800 + 960);
  expect(sounding.at(-1)!).toBeGreaterThan(4_800 + 950);
});

test('10 dB more level is 10 dB more sound', () => {
  const ratio = rms(rendered([beep({ levelDb: -20 })])) / rms(rendered([beep({ levelDb: -30 })]));
  expect(20 * Math.log10(ratio)).toBeCloseTo(10, 3);
});

test('the note has the pitch: its zero crossings come twice a period', () => {
  const out = rendered([beep({ pitchHz: 840, lengthSamples: 4_800 })]);
  let crossings = 0;
  for (let i = 4_800; i < 9_599; i++) if (out[i]! < 0 !== out[i + 1]! < 0) crossings++;
  expect(crossings / 0.1 / 2).toBeGreaterThan(830);
  expect(crossings / 0.1 / 2).toBeLessThan(850);
});

test('edges are 5 ms raised cosines: no step is larger than the note itself makes', () => {
  const out = rendered([beep({ levelDb: 0, lengthSamples: 2_400 })]);
  const largest = 0.5 * 2 * Math.sin((Math.PI * 1_000) / RATE);
  for (let i = 1; i < out.length; i++) expect(Math.abs(out[i]! - out[i - 1]!)).toBeLessThanOrEqual(largest * 1.02);
  expect(Math.abs(out[4_800]!)).toBeLessThan(0.001);
});

test('blocks of any size give the same samples', () => {
  const scene: VoiceScene = { noiseDb: -30, buzzDb: -40, mainsHz: 50 };
  const pulses = [beep(), beep({ atSample: 9_000, pitchHz: 1_400 })];
  expect(rendered(pulses, scene, 14_400, 128 * 5)).toEqual(rendered(pulses, scene, 14_400, 14_400));
});

test('noise has the power its level says, against a pulse of the same level, inside the passband', () => {
  const noise = rendered([], { ...QUIET, noiseDb: -20 }, RATE * 2);
  const tone = rendered([beep({ atSample: 0, lengthSamples: RATE, levelDb: -20 })], QUIET, RATE);
  expect(Math.abs(20 * Math.log10(rms(noise) / rms(tone)))).toBeLessThan(0.4);
});

test('buzz comes in bursts at twice the mains frequency', () => {
  const out = rendered([], { ...QUIET, buzzDb: -10, mainsHz: 50 }, RATE);
  const power = (phase: number) => {
    let sum = 0;
    for (let i = 0; i < out.length; i++) if (Math.abs((((i / RATE) * 100) % 1) - phase) < 0.1) sum += out[i]! ** 2;
    return sum;
  };
  expect(power(0.55) / power(0.05 + 0.05)).toBeGreaterThan(10);
});

test('however loud, no sample passes -1 dBFS', () => {
  const pulses = [1_000, 1_300, 1_700, 2_100].map((pitchHz) => beep({ pitchHz, levelDb: 0, lengthSamples: 4_800 }));
  const out = rendered(pulses, { noiseDb: 0, buzzDb: 0, mainsHz: 50 });
  const peak = out.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  expect(peak).toBeLessThanOrEqual(PEAK);
  expect(peak).toBeGreaterThan(0.7);
});

test('pulse times do not drift: after 30 minutes a pulse still starts on its sample', () => {
  const at = RATE * 1_800;
  const voice = makeVoice(RATE);
  const out = new Float32Array(2_000);
  voice.render(out, at - 500, [beep({ atSample: at })], QUIET);
  expect(out.findIndex((x) => x !== 0)).toBeGreaterThanOrEqual(500);
  expect(out.findIndex((x) => x !== 0)).toBeLessThan(510);
});

test('a WAV file says 48 kHz, 16 bit, one channel, and holds the samples', () => {
  const bytes = wavBytes(Float32Array.from([0, 0.5, -1]), RATE);
  const view = new DataView(bytes.buffer);
  expect(new TextDecoder().decode(bytes.subarray(0, 4)) + new TextDecoder().decode(bytes.subarray(8, 16))).toBe('RIFFWAVEfmt ');
  expect([view.getUint16(22, true), view.getUint32(24, true), view.getUint16(34, true), view.getUint32(40, true)]).toEqual([
    1,
    RATE,
    16,
    6,
  ]);
  expect([view.getInt16(44, true), view.getInt16(46, true), view.getInt16(48, true)]).toEqual([0, 16384, -32767]);
});
