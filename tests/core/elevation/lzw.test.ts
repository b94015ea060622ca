import { expect, test } from 'vitest';
import { unLzw } from '../../../src/core/elevation/lzw';
import { randomFor } from '../../../src/core/random/draw';

/** Packs as TIFF 6.0, section 13 says: a table that is begun anew once code 4,094 is in it, each width left as soon as its last code is in it. */
function lzw(bytes: Uint8Array): Uint8Array {
  const out: number[] = [];
  let [held, bits, width] = [0, 0, 9];
  const put = (code: number) => {
    held = (held << width) | code;
    bits += width;
    for (; bits >= 8; bits -= 8) out.push((held >> (bits - 8)) & 255);
    held &= (1 << bits) - 1;
  };
  let table = new Map<string, number>();
  let next = 258;
  const clear = () => {
    put(256);
    table = new Map();
    [next, width] = [258, 9];
  };
  const codeOf = (text: string) => (text.length === 1 ? text.charCodeAt(0) : table.get(text)!);
  clear();
  let run = '';
  for (const byte of bytes) {
    const letter = String.fromCharCode(byte);
    if (run === '' || table.has(run + letter)) {
      run += letter;
      continue;
    }
    put(codeOf(run));
    table.set(run + letter, next++);
    if (next === 512 || next === 1_024 || next === 2_048) width++;
    if (next === 4_095) clear();
    run = letter;
  }
  if (run !== '') put(codeOf(run));
  put(257);
  if (bits > 0) out.push((held << (8 - bits)) & 255);
  return Uint8Array.from(out);
}

test.each([1, 7, 300, 9_000, 200_000])('%i bytes come back as they were, of few letters and of many', (length) => {
  for (const letters of [1, 3, 256]) {
    const random = randomFor(`lzw-${length}-${letters}`, 'walk');
    const bytes = Uint8Array.from({ length }, () => Math.floor(random() * letters));
    expect(unLzw(lzw(bytes), length)).toEqual(bytes);
  }
});

test('no more comes out than was asked for, and less where there is less', () => {
  const bytes = new Uint8Array(100_000).fill(9);
  expect(unLzw(lzw(bytes), 500)).toEqual(bytes.subarray(0, 500));
  expect(unLzw(lzw(bytes), 120_000)).toHaveLength(100_000);
});

test('a code before there is one is refused, whatever else is spoilt is read to some end', () => {
  expect(unLzw(Uint8Array.of(0xff, 0xff, 0xff), 100)).toBe(null);
  const packed = lzw(Uint8Array.from({ length: 4_000 }, (_, i) => (i * i) % 251));
  const random = randomFor('lzw-spoilt', 'walk');
  for (let i = 0; i < 2_000; i++) {
    const spoilt = packed.slice();
    spoilt[Math.floor(random() * spoilt.length)] = Math.floor(random() * 256);
    expect(unLzw(spoilt, 4_000)?.length ?? 0).toBeLessThanOrEqual(4_000);
  }
});
