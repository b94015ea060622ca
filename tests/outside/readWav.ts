import { readFileSync } from 'node:fs';

/** An independent reader: it knows the WAV and nothing of the program. Pulses come once a second. */
export type Second = { readonly pulseDb: number; readonly noiseDb: number };

const SLOT_S = 0.02;

/** For each second of a file: level of the pulse and of the noise round it, dB re full scale; the pulse slot is found by folding. */
export function readSeconds(file: string): readonly Second[] {
  const bytes = readFileSync(file);
  const rate = bytes.readUInt32LE(24);
  const samples = new Int16Array(bytes.buffer.slice(bytes.byteOffset + 44, bytes.byteOffset + bytes.length - ((bytes.length - 44) % 2)));
  const seconds = Math.floor(samples.length / rate);
  const slot = Math.round(SLOT_S * rate);
  const starts = Array.from({ length: Math.floor((rate - slot) / (slot / 8)) }, (_, i) => Math.round((i * slot) / 8));
  const power = (from: number, length: number) => {
    let sum = 0;
    for (let i = from; i < from + length; i++) sum += (samples[i]! / 32_767) ** 2;
    return sum / length;
  };
  const folded = starts.map((start) => Array.from({ length: seconds }, (_, s) => power(s * rate + start, slot)).reduce((a, b) => a + b, 0));
  const best = starts[folded.indexOf(Math.max(...folded))]!;
  const away = (best + rate / 2) % rate;
  return Array.from({ length: seconds }, (_, s) => {
    const noise = power(Math.round(s * rate + (away > rate - 0.4 * rate ? 0.1 * rate : away)), Math.round(0.3 * rate));
    const pulse = Math.max(1e-12, power(s * rate + best, slot) - noise);
    return { pulseDb: 10 * Math.log10(pulse), noiseDb: 10 * Math.log10(Math.max(1e-12, noise)) };
  });
}

export const meanDb = (levelsDb: readonly number[]): number => levelsDb.reduce((sum, db) => sum + db, 0) / levelsDb.length;
