import { randomFor } from '../../src/core/random/draw';

type Draw = () => number;

const pick = <T>(items: readonly T[], draw: Draw): T => items[Math.floor(draw() * items.length)]!;

/** Pieces that have broken readers of files: numbers that no double holds, keys of JavaScript's own, markup, hidden letters. */
const PIECES: readonly string[] = [
  'null',
  'true',
  '-0',
  '1e999',
  '-1e999',
  '1e-999',
  '9007199254740993',
  '0.1e+1',
  'NaN',
  'Infinity',
  '01',
  '+1',
  '1_000',
  '0x10',
  '""',
  '[]',
  '{}',
  '[[[[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]]]]',
  '{"__proto__":{"polluted":true}}',
  '{"constructor":{"prototype":{"polluted":true}}}',
  '"__proto__":{"polluted":1},',
  '"name":"Ash","name":"Ash",',
  '"<img src=x onerror=alert(1)>"',
  '"\\u202eGnilrevo"',
  '"Me\\u200brle"',
  '"\\ud800"',
  '"\\u0000"',
  '"Мerle"',
  '"2031-13-45T99:99:99+99:99"',
  '"constructor"',
  '\uFEFF',
  '\u2028',
  '/* */',
  "'",
  '\\',
  '"',
  '{',
  '}',
  '[',
  ']',
  ',',
  ':',
];

const span = (text: string, most: number, draw: Draw): readonly [number, number] => {
  const from = Math.floor(draw() * (text.length + 1));
  return [from, Math.min(text.length, from + Math.floor(draw() * most))];
};

const digits = (draw: Draw): string =>
  pick(
    [
      () => String(Math.round(draw() * 1e6)),
      () => String((draw() - 0.5) * 10 ** Math.floor(40 * draw() - 10)),
      () => '9'.repeat(1 + Math.floor(400 * draw())),
    ],
    draw,
  )();

/** Ways to spoil a text; each keeps most of it, so that the reader gets past its first look. */
const WAYS: readonly ((text: string, draw: Draw) => string)[] = [
  (text, draw) => {
    const [from, to] = span(text, 40, draw);
    return text.slice(0, from) + text.slice(to);
  },
  (text, draw) => {
    const [from, to] = span(text, 200, draw);
    return text.slice(0, to) + text.slice(from);
  },
  (text, draw) => {
    const [from] = span(text, 1, draw);
    return text.slice(0, from) + pick(PIECES, draw) + text.slice(from);
  },
  (text, draw) => {
    const [from] = span(text, 1, draw);
    return text.slice(0, from) + String.fromCharCode(Math.floor(draw() * (draw() < 0.8 ? 0x7f : 0xffff))) + text.slice(from + 1);
  },
  (text, draw) => text.slice(0, Math.floor(draw() * text.length)),
  // One value in the place of another: a number, or any scalar, is what most of a file is.
  (text, draw) => swapped(text, /-?\d+(\.\d+)?([eE][-+]?\d+)?/g, () => digits(draw), draw),
  (text, draw) => swapped(text, /(?<=[:,[])("[^"\\]*"|-?\d[\d.]*|true|false|null)/g, () => pick(PIECES, draw), draw),
  (text, draw) => swapped(text, /"[^"\\]*"/g, () => pick(text.match(/"[^"\\]*"/g) ?? ['""'], draw), draw),
  (text, draw) =>
    swapped(text, /"\w+":/g, () => `"${pick(['__proto__', 'constructor', 'toString', 'at', 'name', 'length', '0'], draw)}":`, draw),
  (text, draw) => '['.repeat(Math.floor(draw() * 3_000)) + text,
];

function swapped(text: string, pattern: RegExp, by: () => string, draw: Draw): string {
  const found = [...text.matchAll(pattern)];
  if (found.length === 0) return by();
  const { index, 0: old } = pick(found, draw);
  return text.slice(0, index) + by() + text.slice(index + old.length);
}

/** Letters of a link changed, cut, doubled; its packed bytes are spoilt with them. */
const LINK_WAYS: readonly ((text: string, draw: Draw) => string)[] = [
  ...WAYS.slice(0, 5),
  (text, draw) => {
    const [from] = span(text, 1, draw);
    return text.slice(0, from) + pick([...'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_'], draw) + text.slice(from + 1);
  },
  (text, draw) =>
    `d1.${text
      .slice(3)
      .split('')
      .reverse()
      .join('')
      .slice(0, Math.floor(draw() * 500))}`,
];

/** The input of one seed and number: a sample spoilt once or a few times. The same seed and number give the same text for ever. */
export function hostileText(samples: readonly string[], seed: string, number: number, packed = false): string {
  const draw = randomFor(seed, 'test', number);
  let text = pick(samples, draw);
  const times = 1 + Math.floor(4 * draw() ** 2);
  for (let i = 0; i < times; i++) text = pick(packed ? LINK_WAYS : WAYS, draw)(text, draw);
  return text;
}
