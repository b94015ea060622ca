import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { listenCommand } from '../../src/cli/listen';
import { plainScenario } from '../core/world/fixtureScenario';

// Three tags of one place on neighbouring frequencies, heard in the sound file alone. The second lies 600 Hz above the first, the third 5 kHz.

const RATE = 48_000;
const folder = mkdtempSync(join(tmpdir(), 'faintward-several-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const file = join(folder, 'three.json');
beforeAll(() => {
  const plain = plainScenario().tags[0]!;
  const at: [number, number] = [500, 500];
  const tag = (name: string, frequencyMHz: number, pulsesPerMinute: number) => ({
    ...plain,
    name,
    at,
    frequencyMHz,
    pulsesPerMinute,
    driftHzPerHour: 0,
    pulseMs: 40,
  });
  const scenario = plainScenario({
    ground: {
      sizeM: 1_000,
      relief: { style: 'smooth', strengthM: 0, roughness: 0, baseHeightM: 100 },
      cover: { wood: 0, scrub: 0, wet: 0, rock: 0 },
      water: { lakes: 0, streams: 0 },
      tracks: 0,
      farms: 0,
      powerLines: [],
      buildings: [],
      fieldWalls: false,
    },
    tags: [tag('Ewe', 150.1, 60), tag('Ram', 150.1006, 53), tag('Lamb', 150.105, 71)],
    start: { at: [400, 400], facingDeg: 45 },
  });
  writeFileSync(file, JSON.stringify(scenario));
});

type Beep = { readonly tag: number; readonly atS: number };

/** Level of a note in each tag's beeps, dB re full scale, the dial on the clearest note of one of them. */
function heard(dialOn: number): (tag: number, noteHz: number) => number {
  const out = join(folder, 'heard.wav');
  const told = listenCommand(file, { at: '400,400', turn: '45..45', seconds: 10, gain: 40, tag: dialOn, out }) as {
    pulses: readonly Beep[];
  };
  const bytes = readFileSync(out);
  const samples = new Int16Array(bytes.buffer, bytes.byteOffset + 44, (bytes.length - 44) / 2);
  // Beeps of two tags that overlap say nothing about either.
  const alone = told.pulses.filter((beep) => told.pulses.every((other) => other === beep || Math.abs(other.atS - beep.atS) > 0.05));
  return (tag, noteHz) => {
    const powers = alone
      .filter((beep) => beep.tag === tag && beep.atS < 9.9)
      .map(({ atS }) => {
        let [re, im] = [0, 0];
        for (let i = 0; i < 0.03 * RATE; i++) {
          const at = Math.round((atS + 0.005) * RATE) + i;
          const window = 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / (0.03 * RATE));
          re += ((samples[at]! / 32_767) * window * Math.cos((2 * Math.PI * noteHz * at) / RATE)) / (0.03 * RATE);
          im += ((samples[at]! / 32_767) * window * Math.sin((2 * Math.PI * noteHz * at) / RATE)) / (0.03 * RATE);
        }
        return 16 * (re * re + im * im);
      });
    expect(powers.length).toBeGreaterThan(1);
    return 10 * Math.log10(powers.reduce((sum, power) => sum + power, 0) / powers.length + 1e-12);
  };
}

test('with the dial on the first tag both neighbours beep, one at 1 000 Hz, the other at 1 600 Hz, each over 20 dB purer than the other’s note', () => {
  const level = heard(0);
  expect(level(0, 1_000)).toBeGreaterThan(-45);
  expect(level(1, 1_600)).toBeGreaterThan(-45);
  expect(level(0, 1_000) - level(0, 1_600)).toBeGreaterThan(20);
  expect(level(1, 1_600) - level(1, 1_000)).toBeGreaterThan(20);
});

test('a tag 5 kHz away is not heard beside them', () => {
  const level = heard(0);
  expect(level(2, 5_900)).toBeLessThan(level(0, 1_000) - 40);
  expect(level(2, 1_000)).toBeLessThan(level(0, 1_000) - 20);
});

test('tuned to the far tag, that one beeps at 1 000 Hz, the others are over 40 and 25 dB fainter', () => {
  const [near, far] = [heard(0), heard(2)];
  expect(far(2, 1_000)).toBeGreaterThan(-45);
  expect(far(0, 4_000)).toBeLessThan(near(0, 1_000) - 40);
  expect(far(1, 3_400)).toBeLessThan(near(1, 1_600) - 25);
});

test('tuned to the second tag, the first sinks to a note of 400 Hz and grows fainter, so the two are told apart by the dial', () => {
  const [first, second] = [heard(0), heard(1)];
  expect(second(1, 1_000)).toBeGreaterThan(second(1, 400) + 20);
  expect(second(0, 400)).toBeGreaterThan(second(0, 1_000) + 10);
  expect(second(0, 400)).toBeLessThan(first(0, 1_000));
});
