import type UPlot from 'uplot';
import { type GainDistance, onLineDb, PLANE_EARTH_PER_DECADE_DB } from '../../../core/debrief/gainDistance';
import type { Palette } from '../../design/palette';
import { axisStyle, isNarrow, NAMES_NARROW_PX, NAMES_PX, nameLines, signedText } from './chartFrame';
import { useChart } from './useChart';

const DISTANCES_M = [12.5, 25, 50, 100, 200, 400, 800, 1_600, 3_200, 6_400];

type Columns = {
  readonly xs: readonly number[];
  readonly low: readonly (number | null)[];
  readonly high: readonly (number | null)[];
  readonly middle: readonly (number | null)[];
  readonly fit: readonly (number | null)[];
  readonly plane: readonly (number | null)[];
};

/** Least gain over distance, both axes honest: the middle half of what was met, the fitted line, and 40 dB a decade beside it. */
export function DistanceChart({ gain }: { readonly gain: GainDistance }) {
  const columns = columnsOf(gain);
  const data = [columns.xs, columns.high, columns.low, columns.middle, columns.fit, columns.plane] as unknown as UPlot.AlignedData;
  const frame = useChart((size, palette) => optionsOf(columns, size, palette), data, [gain]);
  return (
    <div
      ref={frame}
      class="chart chart-tall"
      role="img"
      aria-label="Least gain over distance, with its fitted line and a line of 40 dB a decade; the table below has the numbers"
    />
  );
}

function columnsOf({ rows, fit }: GainDistance): Columns {
  const middles = rows.map(({ fromM, toM }) => Math.sqrt(Math.max(fromM, toM / 2) * toM));
  const ends = rows.length > 0 ? [Math.max(12.5, middles[0]! / 1.2), middles.at(-1)! * 1.2] : [];
  const xs = [...new Set([...middles, ...ends])].sort((a, b) => a - b);
  const row = (x: number) => rows[middles.indexOf(x)];
  return {
    xs,
    low: xs.map((x) => row(x)?.lowDb ?? null),
    high: xs.map((x) => row(x)?.highDb ?? null),
    middle: xs.map((x) => row(x)?.middleDb ?? null),
    fit: xs.map((x) => (fit ? onLineDb(fit, fit.perDecadeDb, x) : null)),
    plane: xs.map((x) => (fit ? onLineDb(fit, PLANE_EARTH_PER_DECADE_DB, x) : null)),
  };
}

function optionsOf(
  { xs, ...columns }: Columns,
  size: { readonly width: number; readonly height: number },
  palette: Palette,
): UPlot.Options {
  const axis = axisStyle(palette);
  const narrow = isNarrow(size.width);
  const known = [...columns.low, ...columns.high].filter((db) => db !== null);
  const [least, most] = [Math.min(0, ...known), Math.max(30, ...known)];
  const range: [number, number] = [Math.floor(least / 10) * 10, Math.ceil(most / 10) * 10];
  const line = (stroke: string, dash?: number[]): UPlot.Series => ({
    stroke,
    width: 2,
    points: { show: false },
    spanGaps: true,
    ...(dash ? { dash } : {}),
  });
  return {
    ...size,
    padding: [10, (narrow ? NAMES_NARROW_PX : NAMES_PX) + 20, 0, 0],
    legend: { show: false },
    cursor: { show: false },
    scales: { x: { time: false, distr: 3, range: [xs[0] ?? 10, xs.at(-1) ?? 1_000] }, y: { range } },
    axes: [
      {
        ...axis,
        splits: () => DISTANCES_M.filter((m) => m >= (xs[0] ?? 0) && m <= (xs.at(-1) ?? 0)),
        values: (_, at) => at.map((m) => (m === null ? '' : `${m} m`)),
        size: 30,
        space: 40,
        filter: (_, at) => at.map((m, i) => (narrow && i % 2 === 1 ? null : m)),
      },
      { ...axis, size: 46, incrs: [10, 15, 20, 30], values: (_, at) => at.map(signedText) },
    ],
    bands: [{ series: [1, 2], fill: palette['paper-2'] }],
    series: [
      {},
      line(palette.line),
      line(palette.line),
      { stroke: palette.ink, paths: () => null, points: { show: true, size: 8, fill: palette.ink, stroke: palette.ink, width: 0 } },
      line(palette.ink),
      line(palette.truth, [6, 5]),
    ],
    hooks: {
      draw: [
        (plot) =>
          nameLines(plot, [
            { name: 'met', colour: palette.ink, series: 3 },
            { name: narrow ? 'fit' : 'fitted line', colour: palette.ink, series: 4 },
            { name: narrow ? '12 dB' : '12 dB a doubling', colour: palette.truth, series: 5 },
          ]),
      ],
    },
  };
}
