import type { Axis, Chart } from '../../core/listening/chart';
import { type At, type Named, placeLabels } from './chartLabels';

const BOX = { left: 44, right: 292, top: 14, bottom: 202 };
const WIDTH = 300;
const HEIGHT = 250;

function share({ from, to, octaves }: Axis, value: number): number {
  const inside = Math.min(to, Math.max(from, value));
  return octaves ? Math.log(inside / from) / Math.log(to / from) : (inside - from) / (to - from);
}

/** A chart from numbers; every line and dot says itself what it is, and a table stands behind it. */
export function ChartView({ chart }: { readonly chart: Chart }) {
  const x = (value: number) => BOX.left + share(chart.x, value) * (BOX.right - BOX.left);
  const y = (value: number) => BOX.bottom - share(chart.y, value) * (BOX.bottom - BOX.top);
  const labels = labelsOf(chart, ([px, py]) => [x(px), y(py)]);
  return (
    <figure class="chart">
      <figcaption class="chart-name">{chart.name}</figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
        <path class="chart-axis" d={`M${BOX.left} ${BOX.top}V${BOX.bottom}H${BOX.right}`} />
        {chart.x.at.map((at) => (
          <text key={at} class="chart-number" x={x(at)} y={BOX.bottom + 17} text-anchor="middle">
            {at}
          </text>
        ))}
        {chart.y.at.map((at) => (
          <text key={at} class="chart-number" x={BOX.left - 6} y={y(at) + 4.5} text-anchor="end">
            {at}
          </text>
        ))}
        <text class="chart-axis-name" x={BOX.right} y={HEIGHT - 8} text-anchor="end">
          {`${chart.x.name}, ${chart.x.unit}`}
        </text>
        <text class="chart-axis-name" x={BOX.left + 6} y={BOX.top - 1}>
          {`${chart.y.name}, ${chart.y.unit}`}
        </text>
        {chart.lines.map(({ kind, name, points }) => (
          <g key={name} class={`chart-${kind}`}>
            <path class="chart-line" d={`M${points.map(([px, py]) => `${x(px).toFixed(1)} ${y(py).toFixed(1)}`).join('L')}`} />
          </g>
        ))}
        {labels.lines.map(({ line, label }) => (
          <g key={line.name} class={`chart-${line.kind}`}>
            <text class="chart-line-name" x={label.x} y={label.y}>
              {line.name}
            </text>
          </g>
        ))}
        {labels.dots.map(({ dot, at, label }) => (
          <g key={dot.name} class={`chart-dot-${dot.kind}`}>
            <circle class="chart-dot" cx={at[0]} cy={at[1]} r={dot.kind === 'now' ? 6 : 4.5} />
            <text class="chart-dot-name" x={label.x} y={label.y}>
              {dot.name}
            </text>
          </g>
        ))}
      </svg>
      <div class="unseen">
        <table>
          <caption>{chart.name}</caption>
          <thead>
            <tr>
              <th>Point</th>
              <th>{`${chart.x.name}, ${chart.x.unit}`}</th>
              <th>{`${chart.y.name}, ${chart.y.unit}`}</th>
            </tr>
          </thead>
          <tbody>
            {chart.dots.map((dot) => (
              <tr key={dot.name}>
                <th>{dot.name}</th>
                <td>{Math.round(dot.x)}</td>
                <td>{Math.round(dot.y)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </figure>
  );
}

const FRAME = { fromX: BOX.left + 2, toX: WIDTH + 6, fromY: 2, toY: BOX.bottom };
/** Where the name of the upright axis stands. */
const AXIS_NAME = { fromX: BOX.left + 6, toX: BOX.left + 140, fromY: BOX.top - 14, toY: BOX.top + 2 };

/** Names of lines and dots, dots that are heard now first. A single line is named by the chart itself. */
function labelsOf(chart: Chart, put: (point: readonly [number, number]) => At) {
  const dots = [...chart.dots].sort((a, b) => (a.kind === b.kind ? 0 : a.kind === 'now' ? -1 : 1));
  const lines = chart.lines.length > 1 ? chart.lines : [];
  const unnamed = chart.lines.length > 1 ? [] : chart.lines;
  const named: readonly Named[] = [
    ...dots.map(({ name, x, y }) => ({ name, points: [put([x, y])], isDot: true })),
    ...lines.map(({ name, points }) => ({ name, points: points.map(put), isDot: false })),
    ...unnamed.map(({ points }) => ({ name: '', points: points.map(put), isDot: false })),
  ];
  const labels = placeLabels(named, FRAME, [AXIS_NAME]);
  return {
    dots: dots.map((dot, i) => ({ dot, at: put([dot.x, dot.y]), label: labels[i]! })),
    lines: lines.map((line, i) => ({ line, label: labels[dots.length + i]! })),
  };
}
