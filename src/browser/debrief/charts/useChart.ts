import { effect } from '@preact/signals';
import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import UPlot from 'uplot';
import { currentPalette, type Palette } from '../../design/palette';
import { settings } from '../../storage/settings';

export type ChartSize = { readonly width: number; readonly height: number };

/**
 * Keeps a chart in a frame: drawn anew when the frame's size, the palette or what it depends on changes.
 * @returns the frame to draw in; `drawn` hears of every new chart
 */
export function useChart(
  options: (size: ChartSize, palette: Palette) => UPlot.Options,
  data: UPlot.AlignedData,
  depends: readonly unknown[],
  drawn: (chart: UPlot) => void = () => {},
): RefObject<HTMLDivElement | null> {
  const frame = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const parent = frame.current!;
    let chart: UPlot | null = null;
    let waiting = 0;
    const draw = () => {
      waiting = 0;
      chart?.destroy();
      const size = { width: parent.clientWidth, height: parent.clientHeight };
      if (size.width === 0) return;
      chart = new UPlot(options(size, currentPalette()), data, parent);
      drawn(chart);
    };
    const soon = () => {
      if (waiting === 0) waiting = requestAnimationFrame(draw);
    };
    const seen = new ResizeObserver(soon);
    seen.observe(parent);
    const stop = effect(() => {
      void settings.value.palette;
      soon();
    });
    void document.fonts.ready.then(soon);
    return () => {
      seen.disconnect();
      stop();
      cancelAnimationFrame(waiting);
      waiting = -1;
      chart?.destroy();
    };
  }, depends);
  return frame;
}
