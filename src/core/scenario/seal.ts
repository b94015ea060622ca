import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

/** JSON text with keys in code-point order and no spaces: the same value always gives the same text. */
export function canonicalText(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalText).join(',')}]`;
  if (typeof value === 'object' && value !== null) {
    const entries = Object.entries(value).filter(([, item]) => item !== undefined);
    entries.sort(([a], [b]) => (a < b ? -1 : 1));
    return `{${entries.map(([key, item]) => `${JSON.stringify(key)}:${canonicalText(item)}`).join(',')}}`;
  }
  return JSON.stringify(value);
}

/** SHA-256 of the canonical text, 64 hex digits. */
export const digestOf = (value: unknown): string => bytesToHex(sha256(utf8ToBytes(canonicalText(value))));
