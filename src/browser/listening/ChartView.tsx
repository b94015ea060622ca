import type { Axis, Chart } from '../../core/listening/chart';

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
  const names = lineNames(chart, y);
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
        {chart.lines.map(({ kind, name, points }, i) => (
          <g key={name} class={`chart-${kind}`}>
            <path class="chart-line" d={`M${points.map(([px, py]) => `${x(px).toFixed(1)} ${y(py).toFixed(1)}`).join('L')}`} />
            {names[i] && (
              <text class="chart-line-name" x={BOX.right + 2} y={names[i].y} text-anchor="end">
                {name}
              </text>
            )}
          </g>
        ))}
        {dotNames(chart, x, y, names).map(({ dot, px, py, textX, textY }) => (
          <g key={dot.name} class={`chart-dot-${dot.kind}`}>
            <circle class="chart-dot" cx={px} cy={py} r={dot.kind === 'now' ? 6 : 4.5} />
            <text class="chart-dot-name" x={textX} y={textY}>
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

type Box = { readonly fromX: number; readonly toX: number; readonly y: number };
const LETTER = 8.6;
const ROW = 18;

const lineNameBox = (name: string, y: number): Box => ({ fromX: BOX.right + 2 - name.length * LETTER, toX: BOX.right + 2, y });

/** Where the names of the lines stand: at their right ends, apart from one another. */
function lineNames(chart: Chart, y: (value: number) => number): readonly Box[] {
  if (chart.lines.length < 2) return [];
  const boxes: Box[] = [];
  for (const { name, points } of chart.lines) {
    let at = Math.max(BOX.top + 12, y(points.at(-1)?.[1] ?? chart.y.from) - 8);
    while (boxes.some((box) => Math.abs(box.y - at) < ROW)) at += 4;
    boxes.push(lineNameBox(name, at));
  }
  return boxes;
}

/** Names beside their dots: to the right, else above, below or to the left, wherever nothing is written yet. */
function dotNames(chart: Chart, x: (value: number) => number, y: (value: number) => number, written: readonly Box[]) {
  const dots = chart.dots.map((dot): Box => ({ fromX: x(dot.x) - 8, toX: x(dot.x) + 8, y: y(dot.y) + 5 }));
  const taken = [...written, ...dots];
  const inOrder = [...chart.dots].sort((a, b) => (a.kind === b.kind ? 0 : a.kind === 'now' ? -1 : 1));
  return inOrder.map((dot) => {
    const [px, py] = [x(dot.x), y(dot.y)];
    const width = dot.name.length * LETTER;
    const alongTop = py < BOX.top + 40;
    const places = [
      ...(alongTop ? [] : [[px + 11, py + 5]]),
      [px + 6, py + 23],
      [px - width / 2, py + 24],
      [px - width - 11, py + 5],
      [px - width / 2, py - 13],
      [px - width / 2, py + 44],
    ] as [number, number][];
    const free = ([fromX, at]: [number, number]) =>
      fromX >= BOX.left - 6 &&
      fromX + width <= WIDTH + 6 &&
      !taken.some((box) => Math.abs(box.y - at) < ROW && box.fromX < fromX + width && fromX < box.toX);
    const [wishedX, textY] = places.find(free) ?? places[1]!;
    const textX = Math.min(WIDTH + 6 - width, Math.max(BOX.left + 4, wishedX));
    taken.push({ fromX: textX, toX: textX + width, y: textY });
    return { dot, px, py, textX, textY };
  });
}
