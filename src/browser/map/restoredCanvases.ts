import { signal } from '@preact/signals';

/** Counts how often a lost canvas came back empty: whatever is painted watches it and paints anew. */
export const canvasesRestored = signal(0);

const watched = new WeakSet<HTMLCanvasElement>();

/** A graphics driver that restarts takes the pictures of all canvases with it. */
export function watchCanvas(canvas: HTMLCanvasElement): void {
  if (watched.has(canvas)) return;
  watched.add(canvas);
  canvas.addEventListener('contextrestored', () => {
    canvasesRestored.value++;
  });
}
