import type { Axis, Chart } from '../../core/listening/chart';

const BOX = { left: 44, right: 292, top: 14, bottom: 202 };
const WIDTH = 300;
const HEIGHT = 250;

const share = ({ from, to }: Axis, value: number): number => (Math.min(to, Math.max(from, value)) - from) / (to - from);

/** A chart from numbers; every line and dot says itself what it is, and a table stands behind it. */
export function ChartView({ chart }: { readonly chart: Chart }) {
  const x = (value: number) => BOX.left + share(chart.x, value) * (BOX.right - BOX.left);
  const y = (value: number) => BOX.bottom - share(chart.y, value) * (BOX.bottom - BOX.top);
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
          <path
            key={name}
            class={`chart-line chart-${kind}`}
            d={`M${points.map(([px, py]) => `${x(px).toFixed(1)} ${y(py).toFixed(1)}`).join('L')}`}
          />
        ))}
        {placed(chart, x, y).map(({ dot, px, py, textX, textY, anchor }) => (
          <g key={dot.name} class={`chart-dot-${dot.kind}`}>
            <circle class="chart-dot" cx={px} cy={py} r={dot.kind === 'now' ? 6 : 4.5} />
            <text class="chart-dot-name" x={textX} y={textY} text-anchor={anchor}>
              {dot.name}
            </text>
          </g>
        ))}
      </svg>
      <table class="unseen">
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
    </figure>
  );
}

/** Names beside their dots, moved down where they would lie on one another. */
function placed(chart: Chart, x: (value: number) => number, y: (value: number) => number) {
  const taken: { readonly fromX: number; readonly toX: number; readonly y: number }[] = [];
  const inOrder = [...chart.dots].sort((a, b) => (a.kind === b.kind ? 0 : a.kind === 'now' ? -1 : 1));
  return inOrder.map((dot) => {
    const [px, py] = [x(dot.x), y(dot.y)];
    const length = dot.name.length * 9;
    const right = px + 11 + length < WIDTH + 2;
    const textX = right ? px + 11 : Math.max(length, px - 11);
    const [fromX, toX] = right ? [textX, textX + length] : [textX - length, textX];
    let textY = py + 5;
    if (dot.y > chart.y.to - 0.2 * (chart.y.to - chart.y.from)) textY = py + 24; // under a line that runs along the top
    for (let tries = 0; tries < 12 && taken.some((t) => Math.abs(t.y - textY) < 17 && t.fromX < toX && fromX < t.toX); tries++) textY += 6;
    taken.push({ fromX, toX, y: textY });
    return { dot, px, py, textX, textY, anchor: right ? ('start' as const) : ('end' as const) };
  });
}
