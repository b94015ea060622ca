import { effect, type ReadonlySignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type UPlot from 'uplot';
import type { Palette } from '../../design/palette';
import { axisStyle, clock, isNarrow, NAMES_NARROW_PX, NAMES_PX, nameLines, shadeStretch, signedText } from './chartFrame';
import { useChart } from './useChart';

/** One line over time; `null` leaves a gap. `points` draws dots instead of a line. */
export type TimeLine = {
  readonly name: string;
  readonly shortName?: string;
  readonly colour: 'ink' | 'ink-2' | 'sound' | 'truth';
  readonly values: readonly (number | null)[];
  readonly dashed?: boolean;
  /** Width of the dots, CSS pixels. */
  readonly points?: number;
};

export type Span = { readonly fromS: number; readonly toS: number };

/** Lines over the run's time, named at their ends. The cursor is the scrubber's; a press anywhere takes the scrubber there. */
export function TimeChart(props: {
  readonly said: string;
  readonly timeS: readonly number[];
  readonly lines: readonly TimeLine[];
  readonly range: readonly [number, number];
  readonly splits: readonly number[];
  readonly tell?: (value: number) => string;
  /** The space between the first two lines is filled. */
  readonly filled?: boolean;
  /** A level that carries meaning: drawn through. */
  readonly level?: number;
  readonly span: Span;
  readonly stretch: Span | null;
  readonly atS: ReadonlySignal<number>;
  readonly onSeek: (s: number) => void;
  readonly tall?: boolean;
}) {
  const { said, timeS, lines, span, stretch, atS, onSeek, tall } = props;
  const cursor = useRef<HTMLDivElement>(null);
  const plot = useRef<UPlot | null>(null);
  const place = () => {
    const [chart, line] = [plot.current, cursor.current];
    if (!chart || !line) return;
    const x = chart.valToPos(atS.peek(), 'x');
    const width = chart.over.clientWidth;
    line.hidden = !(x >= -1 && x <= width + 1);
    line.style.transform = `translateX(${chart.over.offsetLeft + x}px)`;
    line.style.top = `${chart.over.offsetTop}px`;
    line.style.height = `${chart.over.clientHeight}px`;
  };
  const data = [timeS, ...lines.map(({ values }) => values)] as unknown as UPlot.AlignedData;
  const frame = useChart(
    (size, palette) => optionsOf(props, size, palette),
    data,
    [timeS, lines, span.fromS, span.toS, stretch],
    (chart) => {
      plot.current = chart;
      place();
    },
  );
  useEffect(
    () =>
      effect(() => {
        void atS.value;
        place();
      }),
    [],
  );
  const seek = (event: PointerEvent) => {
    const chart = plot.current;
    if (!chart) return;
    const x = event.clientX - chart.over.getBoundingClientRect().left;
    onSeek(Math.min(span.toS, Math.max(span.fromS, chart.posToVal(x, 'x'))));
  };
  return (
    <div
      ref={frame}
      class={tall ? 'chart chart-tall' : 'chart'}
      role="img"
      aria-label={said}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        seek(event);
      }}
      onPointerMove={(event) => {
        if (event.currentTarget.hasPointerCapture(event.pointerId)) seek(event);
      }}
    >
      <div ref={cursor} class="chart-cursor" />
    </div>
  );
}

type Wanted = Parameters<typeof TimeChart>[0];

function optionsOf(wanted: Wanted, size: { readonly width: number; readonly height: number }, palette: Palette): UPlot.Options {
  const { lines, range, splits, tell = signedText, filled, level, span, stretch } = wanted;
  const axis = axisStyle(palette);
  const wide = splits.some((at) => tell(at).length > 3);
  const narrow = isNarrow(size.width);
  const named = lines.map(({ name, shortName, colour }, i) => ({
    name: narrow ? (shortName ?? name) : name,
    colour: palette[colour],
    series: i + 1,
  }));
  return {
    ...size,
    padding: [10, narrow ? NAMES_NARROW_PX : NAMES_PX, 0, 0],
    legend: { show: false },
    cursor: { show: false },
    scales: { x: { time: false, range: [span.fromS, span.toS] }, y: { range: [range[0], range[1]] } },
    axes: [
      { ...axis, size: 30, values: (_, at) => at.map(clock), grid: { show: false }, incrs: [15, 30, 60, 120, 300, 600, 1_200], space: 70 },
      { ...axis, size: wide ? 64 : 46, splits: () => [...splits], values: (_, at) => at.map(tell) },
    ],
    ...(filled ? { bands: [{ series: [1, 2] as [number, number], fill: palette['paper-2'] }] } : {}),
    series: [{}, ...lines.map((one) => seriesOf(one, palette))],
    hooks: {
      drawClear: [(plot) => shadeStretch(plot, stretch, palette)],
      draw: [
        (plot) => {
          if (level !== undefined) drawLevel(plot, level, palette);
          nameLines(plot, named);
        },
      ],
    },
  };
}

function seriesOf({ colour, dashed, points }: TimeLine, palette: Palette): UPlot.Series {
  const stroke = palette[colour];
  if (points) return { stroke, fill: stroke, paths: () => null, points: { show: true, size: points, fill: stroke, stroke, width: 0 } };
  return { stroke, width: 2, points: { show: false }, spanGaps: false, ...(dashed ? { dash: [6, 5] } : {}) };
}

function drawLevel(plot: UPlot, level: number, palette: Palette): void {
  const { ctx, bbox } = plot;
  const y = plot.valToPos(level, 'y', true);
  ctx.strokeStyle = palette['ink-2'];
  ctx.lineWidth = 1.5;
  ctx.beginPath();
  ctx.moveTo(bbox.left, y);
  ctx.lineTo(bbox.left + bbox.width, y);
  ctx.stroke();
}
