import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

const PALETTES = Object.fromEntries(
  [...readFileSync('src/browser/design/palette.css', 'utf8').matchAll(/data-palette="(\w+)"\] \{([^}]*)\}/g)].map(([, name, body]) => [
    name!,
    Object.fromEntries([...body!.matchAll(/--([\w-]+): (#[0-9a-f]{6})/g)].map(([, token, hex]) => [token!, hex!])),
  ]),
);

type Rgb = readonly [number, number, number];
const linear = (hex: string): Rgb => {
  const part = (at: number) => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return [part(1), part(3), part(5)];
};
const luminance = ([red, green, blue]: Rgb): number => 0.2126 * red + 0.7152 * green + 0.0722 * blue;

/** WCAG 2.2 contrast ratio. */
function contrast(a: string, b: string): number {
  const [light, dark] = [luminance(linear(a)), luminance(linear(b))].sort((x, y) => y - x);
  return (light! + 0.05) / (dark! + 0.05);
}

/** Colours as seen without one kind of cone: Machado, Oliveira and Fernandes 2009, severity 1 (values from memory). */
const WITHOUT_CONE: Readonly<Record<string, readonly Rgb[]>> = {
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};
const seen = (matrix: readonly Rgb[], rgb: Rgb): Rgb =>
  matrix.map((row) => Math.min(1, Math.max(0, row[0] * rgb[0] + row[1] * rgb[1] + row[2] * rgb[2]))) as unknown as Rgb;

/** Distance in CIELAB, D65. */
function difference(a: Rgb, b: Rgb): number {
  const lab = ([red, green, blue]: Rgb): Rgb => {
    const f = (t: number) => (t > 0.008856 ? Math.cbrt(t) : 7.787 * t + 16 / 116);
    const x = f((0.4124 * red + 0.3576 * green + 0.1805 * blue) / 0.9505);
    const y = f(luminance([red, green, blue]));
    const z = f((0.0193 * red + 0.1192 * green + 0.9505 * blue) / 1.089);
    return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
  };
  const [p, q] = [lab(a), lab(b)];
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
}

test('there are a day, a night and a bright-sun palette', () => {
  expect(Object.keys(PALETTES)).toEqual(['day', 'night', 'sun']);
});

describe.each(Object.entries(PALETTES))('palette %s', (_, tokens) => {
  test.each([
    ['ink', 'paper', 7],
    ['ink', 'paper-2', 7],
    ['ink-2', 'paper', 4.5],
    ['ink-2', 'paper-2', 4.5],
    ['on-ink', 'ink', 7],
    ['sound', 'paper', 4.5],
    ['truth', 'paper', 4.5],
    ['ink', 'open', 7],
    ['ink', 'wood', 7],
    ['sound', 'open', 3],
    ['sound', 'wood', 3],
  ] as const)('%s on %s has a contrast of at least %d', (front, back, least) => {
    expect(contrast(tokens[front]!, tokens[back]!)).toBeGreaterThanOrEqual(least);
  });

  test.each(Object.entries(WITHOUT_CONE))('with %s sound, truth and ink still differ by 15 CIELAB units or more', (_, matrix) => {
    const colours = ['sound', 'truth', 'ink'].map((token) => seen(matrix, linear(tokens[token]!)));
    const gaps = [difference(colours[0]!, colours[1]!), difference(colours[0]!, colours[2]!), difference(colours[1]!, colours[2]!)];
    expect(Math.min(...gaps)).toBeGreaterThanOrEqual(15);
  });

  test.each(Object.entries(WITHOUT_CONE))(
    'with %s sound, truth and ink keep the contrast of 3 to paper that WCAG 2.2 asks of drawn things',
    (_, matrix) => {
      const light = (token: string) => luminance(seen(matrix, linear(tokens[token]!))) + 0.05;
      for (const token of ['sound', 'truth', 'ink', 'ink-2']) {
        const [more, less] = [light(token), light('paper')].sort((a, b) => b - a);
        expect(more! / less!, token).toBeGreaterThanOrEqual(3);
      }
    },
  );
});
