import UPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import { NUMBERS_FONT, type Palette, WORDS_FONT } from '../../design/palette';

/** What every chart of the debrief shares: axes in the program's type, and names at the lines instead of a legend. */
export const clock = (s: number): string =>
  `${s < 0 ? '−' : ''}${Math.floor(Math.abs(s) / 60)}:${String(Math.floor(Math.abs(s) % 60)).padStart(2, '0')}`;

/** Minus signs as print has them. */
export const signedText = (value: number): string => String(Math.round(value)).replace('-', '−');

/** Room for the names at the right, CSS pixels. */
export const NAMES_PX = 108;
export const NAMES_NARROW_PX = 74;
export const isNarrow = (widthPx: number): boolean => widthPx < 520;

export const axisStyle = (palette: Palette): UPlot.Axis => ({
  stroke: palette['ink-2'],
  font: `12.5px ${NUMBERS_FONT}`,
  grid: { stroke: palette.line, width: 1 },
  ticks: { show: false },
});

export type NamedLine = { readonly name: string; readonly colour: string; readonly series: number };

const APART_PX = 16;

/** Each line carries its name at its right end, as near to its own height as the others let it. */
export function nameLines(plot: UPlot, lines: readonly NamedLine[]): void {
  const { ctx } = plot;
  const ratio = UPlot.pxRatio;
  const ends = lines.flatMap(({ name, colour, series }) => {
    const value = lastInView(plot, series);
    return value === null ? [] : [{ name, colour, y: plot.valToPos(value, 'y', true) }];
  });
  ends.sort((a, b) => a.y - b.y);
  for (let i = 1; i < ends.length; i++) ends[i]!.y = Math.max(ends[i]!.y, ends[i - 1]!.y + APART_PX * ratio);
  const floor = plot.bbox.top + plot.bbox.height;
  for (let i = ends.length - 1; i >= 0; i--) {
    const below = i + 1 < ends.length ? ends[i + 1]!.y - APART_PX * ratio : floor;
    ends[i]!.y = Math.min(ends[i]!.y, below);
  }
  ctx.font = `600 ${12.5 * ratio}px ${WORDS_FONT}`;
  ctx.textAlign = 'left';
  ctx.textBaseline = 'middle';
  for (const { name, colour, y } of ends) {
    ctx.fillStyle = colour;
    ctx.fillText(name, plot.bbox.left + plot.bbox.width + 8 * ratio, y);
  }
}

function lastInView(plot: UPlot, series: number): number | null {
  const [from, to] = [plot.scales['x']!.min ?? 0, plot.scales['x']!.max ?? 0];
  const [xs, ys] = [plot.data[0], plot.data[series]!];
  for (let i = xs.length - 1; i >= 0; i--) {
    const y = ys[i];
    if (xs[i]! <= to && xs[i]! >= from && y !== null && y !== undefined) return y;
  }
  return null;
}

/** A stretch of the run behind the lines. */
export function shadeStretch(plot: UPlot, stretch: { readonly fromS: number; readonly toS: number } | null, palette: Palette): void {
  if (!stretch) return;
  const from = Math.max(plot.bbox.left, plot.valToPos(stretch.fromS, 'x', true));
  const to = Math.min(plot.bbox.left + plot.bbox.width, Math.max(from + 4, plot.valToPos(stretch.toS, 'x', true)));
  if (to <= from) return;
  plot.ctx.fillStyle = palette.line;
  plot.ctx.fillRect(from, plot.bbox.top, to - from, plot.bbox.height);
}
