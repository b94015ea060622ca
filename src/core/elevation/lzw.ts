const CLEAR = 256;
const END = 257;
const MOST_CODES = 4_096;

/**
 * Unpacks LZW as TIFF has it: codes of 9 to 12 bits, highest bit first, each width left one code early. What comes out beyond `mostBytes`
 * is dropped, so that a bomb finds no more room. @returns what came out; `null` for a code that can't come there
 * @source TIFF 6.0, section 13
 */
export function unLzw(bytes: Uint8Array, mostBytes: number): Uint8Array | null {
  const out = new Uint8Array(mostBytes);
  const prefix = new Uint16Array(MOST_CODES);
  const suffix = Uint8Array.from({ length: MOST_CODES }, (_, code) => code & 255);
  const first = suffix.slice();
  const lengths = new Uint32Array(MOST_CODES).fill(1, 0, CLEAR);
  let [at, next, width, before] = [0, END + 1, 9, -1];
  let [held, bits] = [0, 0];
  /** Writes the string of a code where `at` stands, last letter first. */
  const write = (code: number): void => {
    let [now, place] = [code, at + lengths[code]! - 1];
    for (;;) {
      if (place < mostBytes) out[place] = suffix[now]!;
      if (lengths[now] === 1) return;
      now = prefix[now]!;
      place--;
    }
  };
  for (const byte of bytes) {
    held = ((held << 8) | byte) & 0xff_ffff;
    bits += 8;
    if (bits < width) continue;
    bits -= width;
    const code = (held >> bits) & ((1 << width) - 1);
    if (code === END || at >= mostBytes) break;
    if (code === CLEAR) {
      [next, width, before] = [END + 1, 9, -1];
      continue;
    }
    if (code > next || (code === next && before < 0) || (before < 0 && code > CLEAR)) return null;
    if (before >= 0 && next < MOST_CODES) {
      prefix[next] = before;
      lengths[next] = lengths[before]! + 1;
      first[next] = first[before]!;
      suffix[next] = first[code === next ? before : code]!;
      next++;
    }
    write(code);
    at += lengths[code]!;
    before = code;
    if (next + 1 >= 1 << width && width < 12) width++;
  }
  return out.subarray(0, Math.min(at, mostBytes));
}
