import { sha1 } from '@noble/hashes/legacy.js';
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, concatBytes, hexToBytes, utf8ToBytes } from '@noble/hashes/utils.js';

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

/** Namespace of names that are URLs. @source RFC 9562, section 6.6 */
export const URL_NAMESPACE = '6ba7b811-9dad-11d1-80b4-00c04fd430c8';

/** The UUID of a name in a namespace: the same name, the same UUID. @source RFC 9562, version 5 */
export function uuidFor(namespace: string, name: string): string {
  const bytes = sha1(concatBytes(hexToBytes(namespace.replaceAll('-', '')), utf8ToBytes(name))).slice(0, 16);
  bytes[6] = (bytes[6]! & 0x0f) | 0x50;
  bytes[8] = (bytes[8]! & 0x3f) | 0x80;
  return bytesToHex(bytes).replace(/^(.{8})(.{4})(.{4})(.{4})/, '$1-$2-$3-$4-');
}
