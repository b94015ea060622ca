import { deflateSync, Inflate, strFromU8, strToU8, unzlibSync } from 'fflate';

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

export const bytesOf = (text: string): Uint8Array => strToU8(text);
export const textOf = (bytes: Uint8Array): string => strFromU8(bytes);

/** Packed by deflate, as small as it gets. @source RFC 1951 */
export const deflated = (bytes: Uint8Array, dictionary?: Uint8Array): Uint8Array =>
  deflateSync(bytes, { level: 9, mem: 12, ...(dictionary ? { dictionary } : {}) });

/** Deflate makes at most 1,032 bytes of one: a piece of this size can't overshoot by more than 64 kB. */
const PIECE_BYTES = 64;

/**
 * Unpacks piece by piece and stops as soon as more than `mostBytes` come out: a bomb never gets its room.
 * @returns `null` for what is cut off or was never packed
 */
export function inflated(bytes: Uint8Array, mostBytes: number, dictionary?: Uint8Array): Uint8Array | null | 'too much' {
  const chunks: Uint8Array[] = [];
  let [length, ended] = [0, false];
  const stream = new Inflate(dictionary ? { dictionary } : {}, (chunk, final) => {
    chunks.push(chunk);
    length += chunk.length;
    ended ||= final;
  });
  try {
    for (let from = 0; from < bytes.length; from += PIECE_BYTES) {
      stream.push(bytes.subarray(from, from + PIECE_BYTES), from + PIECE_BYTES >= bytes.length);
      if (length > mostBytes) return 'too much';
    }
  } catch {
    return null;
  }
  if (!ended) return null;
  const all = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    all.set(chunk, at);
    at += chunk.length;
  }
  return all;
}

/**
 * Unpacks deflate with the head of zlib into room that the caller sets: what comes out beyond it is dropped, so that a bomb finds no more.
 * @returns what came out; `null` for what is cut off or was never packed   @source RFC 1950
 */
export function unzlibbed(bytes: Uint8Array, mostBytes: number): Uint8Array | null {
  try {
    return unzlibSync(bytes, { out: new Uint8Array(mostBytes) });
  } catch {
    return null;
  }
}

/** Base 64 with the alphabet for links, without padding. @source RFC 4648, section 5 */
export function toLetters(bytes: Uint8Array): string {
  const parts: string[] = [];
  let [text, bits, held] = ['', 0, 0];
  for (const byte of bytes) {
    held = (held << 8) | byte;
    for (bits += 8; bits >= 6; bits -= 6) text += ALPHABET[(held >> (bits - 6)) & 63];
    held &= 0xff;
    if (text.length < 8_192) continue;
    parts.push(text);
    text = '';
  }
  if (bits > 0) text += ALPHABET[(held << (6 - bits)) & 63];
  return parts.join('') + text;
}

const VALUES = new Map([...ALPHABET].map((letter, value) => [letter, value]));

/** The bytes in such letters; `null` where another letter stands among them. */
export function fromLetters(text: string): Uint8Array | null {
  const bytes = new Uint8Array(Math.floor((text.length * 6) / 8));
  let [bits, held, at] = [0, 0, 0];
  for (const letter of text) {
    const value = VALUES.get(letter);
    if (value === undefined) return null;
    held = ((held << 6) | value) & 0xffff;
    bits += 6;
    if (bits < 8) continue;
    bits -= 8;
    bytes[at++] = (held >> bits) & 0xff;
  }
  return bytes;
}
