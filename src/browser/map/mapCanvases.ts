import type { World } from '../../core/world/world';
import { currentPalette } from '../design/palette';
import { settings } from '../storage/settings';
import type { LandDrawing } from './landDrawing';
import { type LandPainter, landPainter } from './landPainter';
import { canvasesRestored, watchCanvas } from './restoredCanvases';
import type { SizePx } from './screenFrame';

/** The canvas's context, the canvas being made as large as its box on the screen. */
export function contextOf(canvas: HTMLCanvasElement, size: SizePx, dpr: number): CanvasRenderingContext2D {
  const [width, height] = [Math.round(size.width * dpr), Math.round(size.height * dpr)];
  if (canvas.width !== width || canvas.height !== height) [canvas.width, canvas.height] = [width, height];
  watchCanvas(canvas);
  return canvas.getContext('2d')!;
}

/** The same with nothing on it. */
export function clearedContextOf(canvas: HTMLCanvasElement, size: SizePx, dpr: number): CanvasRenderingContext2D {
  const context = contextOf(canvas, size, dpr);
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.clearRect(0, 0, canvas.width, canvas.height);
  return context;
}

/** The painter of the land in the palette of now. */
export function landOf(world: World, land: LandDrawing, dpr: number): () => LandPainter {
  let made: { readonly look: string; readonly paint: LandPainter } | null = null;
  return () => {
    const look = `${settings.peek().palette} ${canvasesRestored.peek()}`;
    if (made?.look !== look) made = { look, paint: landPainter(world, land, currentPalette(), dpr) };
    return made.paint;
  };
}

/** Gathers what is asked for between two frames of the screen. */
export function inNextFrame(paint: (landToo: boolean) => void): { readonly ask: (landToo: boolean) => void; readonly stop: () => void } {
  let waiting = 0;
  let landToo = false;
  return {
    ask(withLand) {
      landToo ||= withLand;
      if (waiting !== 0) return;
      waiting = requestAnimationFrame(() => {
        waiting = 0;
        const withIt = landToo;
        landToo = false;
        paint(withIt);
      });
    },
    stop() {
      cancelAnimationFrame(waiting);
      waiting = -1;
    },
  };
}
