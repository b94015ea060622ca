import { effect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { World } from '../../core/world/world';
import { currentPalette } from '../design/palette';
import type { LandDrawing } from '../map/landDrawing';
import { landPainter } from '../map/landPainter';
import { settings } from '../storage/settings';
import { paintRun, type RunOnMap, viewOf } from './paintRun';

/** The map with the walk on it and the tag where it was. */
export function RunMap({ world, land, run }: { readonly world: World; readonly land: LandDrawing; readonly run: RunOnMap }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const element = canvas.current!;
    const frame = element.parentElement!;
    const dpr = Math.min(3, window.devicePixelRatio || 1);
    const paint = () => {
      const size = { width: frame.clientWidth, height: frame.clientHeight };
      if (size.width === 0) return;
      [element.width, element.height] = [Math.round(size.width * dpr), Math.round(size.height * dpr)];
      const context = element.getContext('2d', { alpha: false })!;
      const palette = currentPalette();
      const view = viewOf(run, size);
      landPainter(world, land, palette, dpr)(context, view, size, dpr);
      paintRun(context, run, view, size, dpr, palette);
    };
    const seen = new ResizeObserver(paint);
    seen.observe(frame);
    const stop = effect(() => {
      void settings.value.palette;
      queueMicrotask(paint);
    });
    return () => {
      seen.disconnect();
      stop();
    };
  }, [world, land, run]);
  return (
    <div class="run-map">
      <canvas ref={canvas} role="img" aria-label="Map with your track, your bearings and the tag" />
    </div>
  );
}
