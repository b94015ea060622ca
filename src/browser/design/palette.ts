/** The colours that canvases need, read from the style sheet so that each is written once. */
const NAMES = [
  'paper',
  'paper-2',
  'line',
  'ink',
  'ink-2',
  'sound',
  'truth',
  'open',
  'wood',
  'wood-edge',
  'scrub',
  'wet',
  'contour',
  'water',
  'water-edge',
  'rock',
  'shade-dark',
  'shade-light',
  'sky-top',
  'sky-foot',
  'haze',
  'ridge',
  'on-ink',
] as const;

export type ColourName = (typeof NAMES)[number];
export type Palette = Readonly<Record<ColourName, string>>;
export const PALETTE_IDS = ['day', 'night', 'sun'] as const;
export type PaletteId = (typeof PALETTE_IDS)[number];

/** Fonts as canvases want them. */
export const WORDS_FONT = '"Atkinson Next", system-ui, sans-serif';
export const NUMBERS_FONT = '"Atkinson Mono", ui-monospace, monospace';

/** The palette that the page shows now. */
export function currentPalette(): Palette {
  const style = getComputedStyle(document.documentElement);
  return Object.fromEntries(NAMES.map((name) => [name, style.getPropertyValue(`--${name}`).trim()])) as Record<ColourName, string>;
}

/** Red, green, blue 0..255 of a `#rrggbb` colour, or of the `#rgb` that a style sheet's packer makes of it. */
export function rgbOf(hex: string): readonly [number, number, number] {
  const long = hex.length < 7 ? hex.replaceAll(/[0-9a-f]/gi, '$&$&') : hex;
  const value = Number.parseInt(long.slice(1, 7), 16);
  return [(value >> 16) & 255, (value >> 8) & 255, value & 255];
}

/** The colour `share` of the way from one to another. */
export function between(fromHex: string, toHex: string, share: number): string {
  const [from, to] = [rgbOf(fromHex), rgbOf(toHex)];
  return `rgb(${from.map((value, i) => Math.round(value + (to[i]! - value) * share)).join(',')})`;
}
