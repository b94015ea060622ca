/** The head that stands for nothing. */
const NOTHING = 128;

/**
 * Unpacks PackBits: a head under 128 goes before that many letters and one, a higher one before a letter that is repeated. What comes out
 * beyond `mostBytes` is dropped. @returns what came out; `null` where the last head promises more than there is
 * @source TIFF 6.0, section 9
 */
export function unPackBits(bytes: Uint8Array, mostBytes: number): Uint8Array | null {
  const out = new Uint8Array(mostBytes);
  let at = 0;
  for (let from = 0; from < bytes.length && at < mostBytes; ) {
    const head = bytes[from++]!;
    if (head === NOTHING) continue;
    const taken = head < NOTHING ? head + 1 : 1;
    if (from + taken > bytes.length) return null;
    if (head < NOTHING) out.set(bytes.subarray(from, from + Math.min(taken, mostBytes - at)), at);
    else out.fill(bytes[from]!, at, at + 257 - head);
    at = Math.min(mostBytes, at + (head < NOTHING ? taken : 257 - head));
    from += taken;
  }
  return out.subarray(0, at);
}
