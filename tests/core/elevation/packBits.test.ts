import { expect, test } from 'vitest';
import { unPackBits } from '../../../src/core/elevation/packBits';
import { randomFor } from '../../../src/core/random/draw';

// TIFF 6.0, section 9, the format's own rules spelt out: a copy of three, a run of four, a head of nothing, a copy of one.
test('copies, runs and a head that stands for nothing', () => {
  expect(unPackBits(Uint8Array.of(2, 7, 8, 9, 253, 5, 128, 0, 1), 20)).toEqual(Uint8Array.of(7, 8, 9, 5, 5, 5, 5, 1));
});

test('the longest copy and the longest run are 128 letters each', () => {
  const copied = Uint8Array.from({ length: 128 }, (_, i) => i);
  const out = unPackBits(Uint8Array.of(127, ...copied, 129, 77), 1_000)!;
  expect(out.subarray(0, 128)).toEqual(copied);
  expect(out.subarray(128)).toEqual(new Uint8Array(128).fill(77));
});

test('no more comes out than was asked for, by a copy or by a run', () => {
  expect(unPackBits(Uint8Array.of(129, 9, 129, 9), 130)).toEqual(new Uint8Array(130).fill(9));
  expect(unPackBits(Uint8Array.of(3, 1, 2, 3, 4), 2)).toEqual(Uint8Array.of(1, 2));
});

test('what ends before its last head is served is refused, whatever else is spoilt is read within its room', () => {
  expect(unPackBits(Uint8Array.of(0, 1, 3, 1, 2), 100)).toBe(null);
  expect(unPackBits(Uint8Array.of(0, 1, 200), 100)).toBe(null);
  const random = randomFor('packbits-spoilt', 'walk');
  for (let i = 0; i < 2_000; i++) {
    const bytes = Uint8Array.from({ length: 60 }, () => Math.floor(random() * 256));
    expect(unPackBits(bytes, 500)?.length ?? 0).toBeLessThanOrEqual(500);
  }
});
