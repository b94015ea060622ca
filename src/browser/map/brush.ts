import type { MapPoint } from '../../core/units/frames';
import type { Palette } from '../design/palette';
import { WORDS_FONT } from '../design/palette';
import { type ScreenPoint, type SizePx, toScreen, type View } from './screenFrame';

/** A canvas to draw on in CSS pixels, with what every drawing needs to know. */
export type Easel = {
  readonly context: CanvasRenderingContext2D;
  readonly palette: Palette;
  readonly view: View;
  readonly size: SizePx;
  readonly at: (point: MapPoint) => ScreenPoint;
};

export function easelOf(context: CanvasRenderingContext2D, palette: Palette, view: View, size: SizePx, dpr: number): Easel {
  context.setTransform(dpr, 0, 0, dpr, 0, 0);
  context.lineCap = 'round';
  context.lineJoin = 'round';
  context.setLineDash([]);
  return { context, palette, view, size, at: (point) => toScreen(view, size, point) };
}

export type Stroke = { readonly colour: string; readonly width: number; readonly dash?: readonly number[]; readonly cap?: CanvasLineCap };

export function line({ context }: Easel, points: readonly ScreenPoint[], { colour, width, dash = [], cap = 'round' }: Stroke): void {
  if (points.length < 2) return;
  context.strokeStyle = colour;
  context.lineWidth = width;
  context.lineCap = cap;
  context.setLineDash([...dash]);
  context.beginPath();
  points.forEach(({ x, y }, i) => {
    if (i === 0) context.moveTo(x, y);
    else context.lineTo(x, y);
  });
  context.stroke();
  context.setLineDash([]);
  context.lineCap = 'round';
}

/** A line on a wider one of paper, so that it stands off the land. */
export function haloed(easel: Easel, points: readonly ScreenPoint[], stroke: Stroke, haloPx = 2.2): void {
  const halo = { colour: easel.palette.paper, width: stroke.width + 2 * haloPx };
  easel.context.globalAlpha = 0.8;
  line(easel, points, halo);
  easel.context.globalAlpha = 1;
  line(easel, points, stroke);
}

export function disc({ context }: Easel, { x, y }: ScreenPoint, radius: number, fill: string | null, edge?: Stroke): void {
  context.beginPath();
  context.arc(x, y, radius, 0, 2 * Math.PI);
  if (fill) {
    context.fillStyle = fill;
    context.fill();
  }
  if (!edge) return;
  context.strokeStyle = edge.colour;
  context.lineWidth = edge.width;
  context.setLineDash([...(edge.dash ?? [])]);
  context.stroke();
  context.setLineDash([]);
}

/** An arrow that ends in a head at its last point. */
export function arrow(easel: Easel, from: ScreenPoint, to: ScreenPoint, stroke: Stroke, headPx = 8): void {
  const angle = Math.atan2(to.y - from.y, to.x - from.x);
  const wing = (turn: number) => ({ x: to.x - headPx * Math.cos(angle + turn), y: to.y - headPx * Math.sin(angle + turn) });
  const head = [wing(0.45), to, wing(-0.45)];
  const halo = { colour: easel.palette.paper, width: stroke.width + 3.6 };
  line(easel, [from, to], halo);
  line(easel, head, halo);
  line(easel, [from, to], stroke);
  line(easel, head, { colour: stroke.colour, width: Math.max(1.6, stroke.width) });
}

export type Lettering = { readonly text: string; readonly colour: string; readonly font?: string; readonly align?: CanvasTextAlign };

/** Words in a halo of paper. What would leave the picture on the right stands on the other side of its place. */
export function write({ context, palette, size }: Easel, at: ScreenPoint, { text, colour, font, align = 'left' }: Lettering): void {
  context.font = font ?? `600 12.5px ${WORDS_FONT}`;
  context.textBaseline = 'middle';
  const over = align === 'left' && at.x + context.measureText(text).width > size.width - 8;
  context.textAlign = over ? 'right' : align;
  const x = over ? at.x - 28 : at.x;
  context.strokeStyle = palette.paper;
  context.lineWidth = 4;
  context.strokeText(text, x, at.y);
  context.fillStyle = colour;
  context.fillText(text, x, at.y + 0.5);
}

/** A step on the screen of so many pixels along a bearing. */
export const stepPx = ({ x, y }: ScreenPoint, bearingDeg: number, px: number): ScreenPoint => ({
  x: x + px * Math.sin((bearingDeg * Math.PI) / 180),
  y: y - px * Math.cos((bearingDeg * Math.PI) / 180),
});
