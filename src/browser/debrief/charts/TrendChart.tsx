import type UPlot from 'uplot';
import type { Palette } from '../../design/palette';
import { axisStyle, isNarrow, NAMES_NARROW_PX, NAMES_PX, nameLines } from './chartFrame';
import { useChart } from './useChart';

type Row = {
  readonly said: string;
  readonly numbers: readonly number[];
  /** Where one began, and how far from there is still chance; `null` where too few numbers are known. */
  readonly chance: { readonly from: number; readonly within: number } | null;
  readonly most?: number;
};

/** Numbers in the order they were made, from an honest zero; between the two thin lines a change is still chance. */
export function TrendChart(row: Row) {
  const { said, numbers, chance } = row;
  const xs = numbers.map((_, i) => i + 1);
  const along = (value: number | null) => xs.map(() => value);
  const high = chance ? chance.from + chance.within : null;
  const low = chance ? Math.max(0, chance.from - chance.within) : null;
  const data = [xs, along(high), along(low), numbers] as unknown as UPlot.AlignedData;
  const frame = useChart((size, palette) => optionsOf(row, size, palette), data, [numbers, chance?.from, chance?.within]);
  return <div ref={frame} class="chart" role="img" aria-label={said} />;
}

function optionsOf(
  { numbers, chance, most }: Row,
  size: { readonly width: number; readonly height: number },
  palette: Palette,
): UPlot.Options {
  const axis = axisStyle(palette);
  const narrow = isNarrow(size.width);
  const top = most ?? 1.1 * Math.max(...numbers, chance ? chance.from + chance.within : 0, 1e-3);
  const thin: UPlot.Series = { stroke: palette.line, width: 1.5, points: { show: false } };
  return {
    ...size,
    padding: [10, narrow ? NAMES_NARROW_PX : NAMES_PX, 0, 0],
    legend: { show: false },
    cursor: { show: false },
    scales: { x: { time: false, range: [0.5, numbers.length + 0.5] }, y: { range: [0, top] } },
    axes: [
      { ...axis, size: 30, grid: { show: false }, incrs: [1, 2, 5, 10, 20, 50, 100], values: (_, at) => at.map((n) => String(n)) },
      { ...axis, size: 46, space: 30 },
    ],
    bands: chance ? [{ series: [1, 2], fill: palette['paper-2'] }] : [],
    series: [
      {},
      thin,
      thin,
      { stroke: palette.ink, width: 2, points: { show: true, size: 7, fill: palette.ink, stroke: palette.ink, width: 0 } },
    ],
    hooks: {
      draw: [(plot) => nameLines(plot, chance ? [{ name: narrow ? 'chance' : 'still chance', colour: palette['ink-2'], series: 1 }] : [])],
    },
  };
}
