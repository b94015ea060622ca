import type { World } from '../../core/world/world';
import { type Palette, WORDS_FONT } from '../design/palette';
import { coverPatterns } from './coverPatterns';
import type { LandDrawing } from './landDrawing';
import { type BoxedPath, landPaths } from './landPaths';
import { builtPaths, paintBuilt, paintTracks, paintWalls, paintWires } from './paintBuilt';
import type { SizePx, View } from './screenFrame';
import { shadeImage } from './shadeImage';

/** Paints the land of a view onto a canvas of `size` CSS pixels at `dpr` device pixels each. */
export type LandPainter = (context: CanvasRenderingContext2D, view: View, size: SizePx, dpr: number) => void;

/** Prepares paths and pictures once for a world and a palette. */
export function landPainter(world: World, land: LandDrawing, palette: Palette, dpr: number): LandPainter {
  const paths = landPaths(land);
  const built = builtPaths(world);
  const shade = shadeImage(land.shade, palette);
  const patterns = coverPatterns(palette, dpr);
  return (context, view, size, deviceRatio) => {
    const scale = view.pxPerM * deviceRatio;
    const px = 1 / view.pxPerM;
    const left = size.width / 2 - view.centre.eM * view.pxPerM;
    const top = size.height / 2 - (land.sizeM - view.centre.nM) * view.pxPerM;
    context.setTransform(1, 0, 0, 1, 0, 0);
    context.fillStyle = palette['paper-2'];
    context.fillRect(0, 0, size.width * deviceRatio, size.height * deviceRatio);
    context.setTransform(scale, 0, 0, scale, left * deviceRatio, top * deviceRatio);
    context.save();
    context.beginPath();
    context.rect(0, 0, land.sizeM, land.sizeM);
    context.clip();
    context.lineJoin = 'round';
    for (const pattern of Object.values(patterns)) pattern.setTransform(new DOMMatrix([1 / scale, 0, 0, 1 / scale, 0, 0]));
    context.fillStyle = palette.open;
    context.fillRect(0, 0, land.sizeM, land.sizeM);
    for (const kind of ['wet', 'scrub', 'wood'] as const) {
      context.fillStyle = palette[kind];
      context.fill(paths[kind], 'evenodd');
    }
    context.imageSmoothingEnabled = true;
    context.imageSmoothingQuality = 'high';
    context.drawImage(shade, 0, 0, land.sizeM, land.sizeM);
    for (const kind of ['wood', 'scrub', 'wet', 'rock'] as const) {
      context.fillStyle = patterns[kind];
      context.fill(paths[kind], 'evenodd');
    }
    stroke(context, paths.wood, palette['wood-edge'], 0.9 * px, 0.8);
    const seen = visible(view, size, land.sizeM);
    contourStroke(context, paths.minor.filter(seen), palette.contour, 0.8 * px, view.pxPerM > 0.1 ? 0.5 : 0.28);
    contourStroke(context, paths.index.filter(seen), palette.contour, 1.35 * px, 0.8);
    context.fillStyle = palette.water;
    context.fill(paths.water, 'evenodd');
    stroke(context, paths.water, palette['water-edge'], 1 * px, 0.9);
    stroke(context, built.streams, palette['water-edge'], 1.5 * px, 0.85);
    paintHeights(context, paths.heights, palette, view, size, land.sizeM);
    paintWalls(context, built, palette, px);
    paintTracks(context, built, palette, px);
    paintBuilt(context, built, palette, px);
    paintGrid(context, palette, land.sizeM, px);
    paintWires(context, world, palette, px);
    context.restore();
    context.strokeStyle = palette.line;
    context.lineWidth = px;
    context.strokeRect(0, 0, land.sizeM, land.sizeM);
  };
}

function stroke(context: CanvasRenderingContext2D, path: Path2D, colour: string, widthM: number, alpha: number): void {
  context.globalAlpha = alpha;
  context.strokeStyle = colour;
  context.lineWidth = widthM;
  context.stroke(path);
  context.globalAlpha = 1;
}

function contourStroke(
  context: CanvasRenderingContext2D,
  lines: readonly BoxedPath[],
  colour: string,
  widthM: number,
  alpha: number,
): void {
  // Rings of a few metres are the marching squares' crumbs, not land forms.
  for (const { path, lengthM } of lines) if (lengthM > 25 && lengthM > widthM * 16) stroke(context, path, colour, widthM, alpha);
}

function visible(view: View, size: SizePx, sizeM: number): (boxed: BoxedPath) => boolean {
  const [halfX, halfY] = [size.width / 2 / view.pxPerM, size.height / 2 / view.pxPerM];
  const [x, y] = [view.centre.eM, sizeM - view.centre.nM];
  return ({ box }) => box[2] >= x - halfX && box[0] <= x + halfX && box[3] >= y - halfY && box[1] <= y + halfY;
}

/** Heights on the index contours, thinned so that they keep clear of each other. */
function paintHeights(
  context: CanvasRenderingContext2D,
  marks: readonly { readonly x: number; readonly y: number; readonly turnRad: number; readonly text: string }[],
  palette: Palette,
  view: View,
  size: SizePx,
  sizeM: number,
): void {
  const apartM = 150 / view.pxPerM;
  const seen = visible(view, size, sizeM);
  const put: { x: number; y: number }[] = [];
  context.font = `600 10.5px ${WORDS_FONT}`;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  for (const { x, y, turnRad, text } of marks) {
    if (!seen({ box: [x, y, x, y] } as unknown as BoxedPath)) continue;
    if (put.some((other) => Math.hypot(other.x - x, other.y - y) < apartM)) continue;
    put.push({ x, y });
    context.save();
    context.translate(x, y);
    context.rotate(turnRad);
    context.scale(1 / view.pxPerM, 1 / view.pxPerM);
    context.lineWidth = 3.5;
    context.strokeStyle = palette.open;
    context.globalAlpha = 0.85;
    context.strokeText(text, 0, 0);
    context.globalAlpha = 1;
    context.fillStyle = palette.contour;
    context.fillText(text, 0, 0);
    context.restore();
  }
}

function paintGrid(context: CanvasRenderingContext2D, palette: Palette, sizeM: number, px: number): void {
  context.globalAlpha = 0.2;
  context.strokeStyle = palette.ink;
  context.lineWidth = px;
  context.beginPath();
  for (let at = 1_000; at < sizeM; at += 1_000) {
    context.moveTo(at, 0);
    context.lineTo(at, sizeM);
    context.moveTo(0, sizeM - at);
    context.lineTo(sizeM, sizeM - at);
  }
  context.stroke();
  context.globalAlpha = 1;
}
