import { expect, test } from 'vitest';
import { pulseTimeS } from '../../../src/core/run/timetable';
import { makeVoice, PEAK, type Sounded, type VoiceScene } from '../../../src/core/voice/pulse';
import { wavBytes } from '../../../src/core/voice/wav';
import { plainScenario } from '../world/fixtureScenario';

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

/** Renders in blocks of one size; `told` changes pulses and scene before the sample it names, on the border of a block. */
function followed(block: number, told: readonly { atSample: number; pulses: readonly Sounded[]; scene: VoiceScene }[]): Float32Array {
  const voice = makeVoice(RATE);
  const out = new Float32Array(14_400);
  for (let at = 0; at < out.length; at += block) {
    const { pulses, scene } = told.filter(({ atSample }) => atSample <= at).at(-1)!;
    voice.render(out.subarray(at, at + block), at, pulses, scene);
  }
  return out;
}

test('knobs turned while noise and pulse sound give the same samples in blocks of 1, 32, 128 and 3 200', () => {
  const scene: VoiceScene = { noiseDb: -30, buzzDb: -40, mainsHz: 50 };
  const long = beep({ lengthSamples: 4_800 });
  const told = [
    { atSample: 0, pulses: [long], scene },
    { atSample: 6_400, pulses: [{ ...long, changes: [{ atSample: 6_400, levelDb: -8 }] }], scene: { ...scene, noiseDb: -24 } },
  ];
  const whole = followed(3_200, told);
  for (const block of [1, 32, 128]) expect(followed(block, told)).toEqual(whole);
  expect(rms(whole.subarray(7_000, 9_000)) / rms(whole.subarray(5_000, 6_400))).toBeGreaterThan(3);
});

test('a knob turned by 20 dB while a pulse sounds makes no step larger than the note itself makes, and is heard within 10 ms', () => {
  const long = beep({ levelDb: -20, lengthSamples: 4_800 });
  const out = rendered([{ ...long, changes: [{ atSample: 7_000, levelDb: 0 }] }]);
  const largest = 0.5 * 2 * Math.sin((Math.PI * 1_000) / RATE);
  for (let i = 1; i < out.length; i++) expect(Math.abs(out[i]! - out[i - 1]!)).toBeLessThanOrEqual(largest * 1.02);
  expect(20 * Math.log10(rms(out.subarray(7_480, 7_528)) / rms(out.subarray(6_900, 6_948)))).toBeGreaterThan(18);
  expect(out.subarray(0, 7_000)).toEqual(rendered([long]).subarray(0, 7_000));
});

test('noise turned up by 40 dB at once rises over milliseconds: no sample jumps by more than the loud noise itself does', () => {
  const told = [-60, -20].map((noiseDb, i) => ({ atSample: 6_400 * i, pulses: [], scene: { ...QUIET, noiseDb } }));
  const out = followed(128, told);
  const jump = (from: number, to: number): number => {
    let largest = 0;
    for (let i = from; i < to; i++) largest = Math.max(largest, Math.abs(out[i]! - out[i - 1]!));
    return largest;
  };
  expect(jump(6_390, 6_500)).toBeLessThan(jump(8_000, 14_400));
  expect(rms(out.subarray(6_400, 6_448))).toBeLessThan(rms(out.subarray(8_000, 14_400)) / 2);
});

test('a rendering taken up again from what the voice remembered gives the samples it would have given', () => {
  const scene: VoiceScene = { noiseDb: -30, buzzDb: -40, mainsHz: 50 };
  const whole = rendered([beep()], scene);
  const voice = makeVoice(RATE);
  const out = new Float32Array(14_400);
  voice.render(out.subarray(0, 5_000), 0, [beep()], scene);
  const memory = voice.memory();
  voice.render(new Float32Array(3_000), 5_000, [], { ...scene, noiseDb: 0 });
  voice.recall(memory);
  voice.render(out.subarray(5_000), 5_000, [beep()], scene);
  expect(out).toEqual(whole);
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

test('pulse times do not drift: each of the 2,250 pulses of 30 minutes starts on the sample of its time', () => {
  const scenario = plainScenario({ tags: [{ ...plainScenario().tags[0]!, pulsesPerMinute: 75 }] });
  const voice = makeVoice(RATE);
  const out = new Float32Array(200);
  const firstS = pulseTimeS(scenario, 0, 0);
  for (let number = 0; number < 2_250; number++) {
    const atSample = Math.round(pulseTimeS(scenario, 0, number) * RATE);
    expect(Math.abs(atSample - Math.round((firstS + number * 0.8) * RATE))).toBeLessThanOrEqual(RATE / 2_000); // times are whole milliseconds
    voice.render(out, atSample - 100, [beep({ atSample })], QUIET);
    expect(out.findIndex((x) => x !== 0)).toBe(101); // the sine's own first sample is 0
  }
  expect(pulseTimeS(scenario, 0, 2_249)).toBeGreaterThan(1_798);
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
