import { effect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import UPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import { currentPalette, NUMBERS_FONT, type Palette, WORDS_FONT } from '../../design/palette';
import { settings } from '../../storage/settings';
import type { RunColumns } from '../runColumns';

export type Stretch = { readonly fromS: number; readonly toS: number };

/** Gain in use over the run, and the least gain that would have heard it: the space between them is the excess. */
export function GainChart({ columns, stretch }: { readonly columns: RunColumns; readonly stretch: Stretch | null }) {
  const frame = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const parent = frame.current!;
    let chart: UPlot | null = null;
    const draw = () => {
      chart?.destroy();
      const size = { width: parent.clientWidth, height: parent.clientHeight };
      if (size.width === 0) return;
      const data: UPlot.AlignedData = [[...columns.timeS], [...columns.netGainDb], [...columns.leastGainDb]];
      chart = new UPlot(options(size, currentPalette(), stretch), data, parent);
    };
    const seen = new ResizeObserver(draw);
    seen.observe(parent);
    const stop = effect(() => {
      void settings.value.palette;
      queueMicrotask(draw);
    });
    return () => {
      seen.disconnect();
      stop();
      chart?.destroy();
    };
  }, [columns, stretch]);
  return (
    <div ref={frame} class="gain-chart" role="img" aria-label="Gain in use and least gain over time; the table below has the numbers" />
  );
}

const clock = (s: number): string => `${Math.floor(s / 60)}:${String(Math.floor(s % 60)).padStart(2, '0')}`;

function options(size: { readonly width: number; readonly height: number }, palette: Palette, stretch: Stretch | null): UPlot.Options {
  const axis = {
    stroke: palette['ink-2'],
    font: `12.5px ${NUMBERS_FONT}`,
    grid: { stroke: palette.line, width: 1 },
    ticks: { show: false },
  };
  return {
    ...size,
    padding: [14, 96, 0, 0],
    legend: { show: false },
    cursor: { show: false },
    scales: { x: { time: false }, y: { range: (_, low, high) => [Math.min(0, Math.floor(low / 10) * 10), Math.max(90, high)] } },
    axes: [
      { ...axis, values: (_, splits) => splits.map(clock), grid: { show: false } },
      { ...axis, size: 48, values: (_, splits) => splits.map((db) => String(db)), incrs: [15, 30] },
    ],
    bands: [{ series: [1, 2], fill: palette['paper-2'] }],
    series: [
      {},
      { stroke: palette.ink, width: 2, points: { show: false } },
      { stroke: palette.truth, width: 2, dash: [6, 5], points: { show: false }, spanGaps: false },
    ],
    hooks: {
      drawClear: [(plot) => shadeStretch(plot, stretch, palette)],
      draw: [(plot) => nameLines(plot, palette)],
    },
  };
}

function shadeStretch(plot: UPlot, stretch: Stretch | null, palette: Palette): void {
  if (!stretch) return;
  const from = plot.valToPos(stretch.fromS, 'x', true);
  const to = Math.max(from + 4, plot.valToPos(stretch.toS, 'x', true));
  plot.ctx.fillStyle = palette.line;
  plot.ctx.fillRect(from, plot.bbox.top, to - from, plot.bbox.height);
}

/** Each line carries its name at its right end. */
function nameLines(plot: UPlot, palette: Palette): void {
  const { ctx } = plot;
  const ratio = UPlot.pxRatio;
  const ends = [1, 2].map((i) => [...plot.data[i]!].reverse().find((value) => value !== null && value !== undefined) ?? null);
  const ys = ends.map((value) => (value === null ? null : plot.valToPos(value, 'y', true)));
  const apart = 17 * ratio;
  const [gainY, leastY] = ys as [number | null, number | null];
  if (gainY !== null && leastY !== null && Math.abs(gainY - leastY) < apart) ys[1] = gainY <= leastY ? gainY + apart : gainY - apart;
  ctx.font = `600 ${12.5 * ratio}px ${WORDS_FONT}`;
  ctx.textAlign = 'left';
  ctx.textBaseline = 'middle';
  (['gain in use', 'least gain'] as const).forEach((name, i) => {
    const y = ys[i];
    if (y === null || y === undefined) return;
    ctx.fillStyle = i === 0 ? palette.ink : palette.truth;
    ctx.fillText(name, plot.bbox.left + plot.bbox.width + 8 * ratio, y);
  });
}
