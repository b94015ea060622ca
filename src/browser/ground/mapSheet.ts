import type { LandPainter } from '../map/landPainter';
import { watchCanvas } from '../map/restoredCanvases';
import type { SizePx, View } from '../map/screenFrame';

/** A painted piece of map, larger than the window, so that walking and dragging need no new painting at each frame. */
export type MapSheet = {
  readonly canvas: HTMLCanvasElement;
  /** Paints anew where the view has left the sheet or has been zoomed. @returns whether it painted */
  readonly follow: (view: View, window: SizePx, nowMs: number) => boolean;
  /** Where the sheet lies: its view's middle and the scale it was painted at. */
  readonly painted: () => View | null;
  /** Size of what is painted, CSS pixels at the scale it was painted at. */
  readonly paintedPx: (window: SizePx) => SizePx;
  readonly repaintWith: (painter: LandPainter) => void;
};

/** The sheet reaches this share of the window beyond it on each side. */
const MARGIN = 0.3;
/** While a zoom goes on the old sheet is stretched; it is painted anew when the zoom has rested so long. */
const ZOOM_REST_MS = 90;
/** Canvases beyond this are refused by some phones. */
const LARGEST_SIDE_PX = 4_096;

export function mapSheet(firstPainter: LandPainter, dpr: number): MapSheet {
  const canvas = document.createElement('canvas');
  watchCanvas(canvas);
  const context = canvas.getContext('2d', { alpha: false })!;
  let painter = firstPainter;
  let painted: View | null = null;
  let zoomedAtMs = 0;
  let lastScale = 0;
  return {
    canvas,
    painted: () => painted,
    paintedPx,
    repaintWith(next) {
      painter = next;
      painted = null;
    },
    follow(view, window, nowMs) {
      if (view.pxPerM !== lastScale) [lastScale, zoomedAtMs] = [view.pxPerM, nowMs];
      const size = paintedPx(window);
      const ratio = Math.min(dpr, LARGEST_SIDE_PX / Math.max(size.width, size.height));
      const [width, height] = [Math.round(size.width * ratio), Math.round(size.height * ratio)];
      const fits = painted !== null && canvas.width === width && canvas.height === height;
      if (fits && painted && !uncovered(painted, view, window) && (painted.pxPerM === view.pxPerM || nowMs - zoomedAtMs < ZOOM_REST_MS))
        return false;
      if (!fits) [canvas.width, canvas.height] = [width, height];
      painter(context, view, size, ratio);
      painted = view;
      return true;
    },
  };
}

const paintedPx = ({ width, height }: SizePx): SizePx => ({ width: width * (1 + 2 * MARGIN), height: height * (1 + 2 * MARGIN) });

function uncovered(painted: View, view: View, window: SizePx): boolean {
  const spareX = (window.width * MARGIN) / painted.pxPerM;
  const spareY = (window.height * MARGIN) / painted.pxPerM;
  const shrunk = view.pxPerM / painted.pxPerM < 0.7;
  return shrunk || Math.abs(view.centre.eM - painted.centre.eM) > spareX || Math.abs(view.centre.nM - painted.centre.nM) > spareY;
}
