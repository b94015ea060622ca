import { oddText } from './foreignText';

/** What a JSON text may hold before it is parsed. */
export type JsonLimits = {
  /** Characters of the text. */
  readonly characters: number;
  /** Values in it, lists and objects included. */
  readonly nodes: number;
  /** Lists and objects inside one another. */
  readonly depth: number;
};

/** Where in the text something is wrong, and what; `minusZero` tells of a -0, which JSON can write and a digest can't tell from 0. */
export type JsonScan = { readonly fault: { readonly at: number; readonly found: string } | null; readonly minusZero: boolean };

/** Keys that reach the prototypes of JavaScript's own objects where a program copies them carelessly. */
const NEVER_KEYS: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);
/** Longest number and longest key that are read, characters: doubles need 24, our keys 19. */
const LONGEST_NUMBER = 60;
const LONGEST_KEY = 60;
/** Texts under these keys name something or somebody. */
const NAME_KEYS: ReadonlySet<string> = new Set(['name', 'title', 'author']);

const [QUOTE, BACKSLASH, COMMA, COLON] = [0x22, 0x5c, 0x2c, 0x3a];
const [OPEN_LIST, CLOSE_LIST, OPEN_OBJECT, CLOSE_OBJECT] = [0x5b, 0x5d, 0x7b, 0x7d];

/** A list or an object that is open; `keys` is null for a list. */
type Open = { readonly keys: Set<string> | null; key: string; awaitsKey: boolean };

/**
 * Looks through a JSON text once, in time that grows with its length alone and with no more memory than its keys, and stops at the
 * first thing that no file of ours holds: too many values, too deep, a key twice, a key of JavaScript's own, a number that no
 * double holds, invisible or misleading letters. It does not tell whether the text is JSON: the parser does that afterwards.
 * One loop over the characters, since a file has millions of them.
 */
export function scanJson(text: string, limits: JsonLimits): JsonScan {
  const open: Open[] = [];
  let [nodes, minusZero] = [0, false];
  const stop = (at: number, found: string): JsonScan => ({ fault: { at, found }, minusZero });
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    const inside = open.at(-1);
    if (code <= 0x20 || code === COLON) continue;
    if (code === COMMA) {
      if (inside?.keys) inside.awaitsKey = true;
    } else if (code === CLOSE_LIST || code === CLOSE_OBJECT) {
      open.pop();
    } else if (code === OPEN_LIST || code === OPEN_OBJECT) {
      if (++nodes > limits.nodes) return stop(i, `more than the ${limits.nodes} values that are read`);
      if (open.length >= limits.depth) return stop(i, `more than ${limits.depth} lists and objects inside one another`);
      open.push({ keys: code === OPEN_OBJECT ? new Set() : null, key: '', awaitsKey: code === OPEN_OBJECT });
    } else if (code === QUOTE) {
      const end = endOfString(text, i);
      const raw = text.slice(i, end);
      if (inside?.keys && inside.awaitsKey) {
        const key = plainString(raw);
        const odd = key === null ? null : oddKey(key, inside.keys);
        if (odd) return stop(i, odd);
        inside.keys.add(key ?? '');
        inside.key = key ?? '';
        inside.awaitsKey = false;
      } else {
        if (++nodes > limits.nodes) return stop(i, `more than the ${limits.nodes} values that are read`);
        const isName = inside?.keys ? NAME_KEYS.has(inside.key) : false;
        const odd = needsLook(raw) ? oddText(plainString(raw) ?? '', isName) : null;
        if (odd) return stop(i, odd);
      }
      i = end - 1;
    } else {
      if (++nodes > limits.nodes) return stop(i, `more than the ${limits.nodes} values that are read`);
      const end = endOfWord(text, i);
      const word = text.slice(i, Math.min(end, i + LONGEST_NUMBER + 1));
      if (word.length > LONGEST_NUMBER) return stop(i, `a number of more than ${LONGEST_NUMBER} characters`);
      const value = Number(word);
      if (Math.abs(value) === Number.POSITIVE_INFINITY && /\d/.test(word))
        return stop(i, 'a number larger than any that can be computed with');
      minusZero ||= Object.is(value, -0);
      i = end - 1;
    }
  }
  return { fault: null, minusZero };
}

function oddKey(key: string, before: ReadonlySet<string>): string | null {
  if (key.length > LONGEST_KEY) return `a key of more than ${LONGEST_KEY} characters`;
  if (NEVER_KEYS.has(key)) return `the key "${key}"`;
  if (before.has(key)) return /^[\x20-\x7e]*$/.test(key) ? `the key "${key}" twice in one object` : 'a key twice in one object';
  return null;
}

/** Just past the closing quote, or the end of the text. */
function endOfString(text: string, from: number): number {
  for (let i = from + 1; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === BACKSLASH) i++;
    else if (code === QUOTE) return i + 1;
  }
  return text.length;
}

function endOfWord(text: string, from: number): number {
  let i = from + 1;
  for (; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code <= 0x20 || code === COMMA || code === CLOSE_LIST || code === CLOSE_OBJECT || code === COLON || code === QUOTE) break;
  }
  return i;
}

/** Plain ASCII without escapes needs no second look. */
const needsLook = (raw: string): boolean => /[^\x20-\x7e]|\\/.test(raw);

/** What a string stands for; `null` where the parser will refuse it. */
function plainString(raw: string): string | null {
  if (!raw.includes('\\')) return raw.slice(1, -1);
  try {
    return JSON.parse(raw) as string;
  } catch {
    return null;
  }
}
