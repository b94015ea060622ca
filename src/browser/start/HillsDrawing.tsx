const SIZE = { width: 1600, height: 260 };

/** Height of a ridge line made of four sines: the drawing at the page's head, not any real ground. */
function ridgeY(x: number, baseY: number, heightPx: number, seed: number): number {
  const t = x / SIZE.width;
  const swell =
    Math.sin(t * 7.1 + seed) * 0.55 +
    Math.sin(t * 17.3 + seed * 2.3) * 0.27 +
    Math.sin(t * 41.7 + seed * 4.1) * 0.11 +
    Math.abs(Math.sin(t * 11.9 + seed * 1.7)) * 0.35;
  return baseY - heightPx * (0.5 + 0.5 * swell);
}

function ridge(...shape: readonly [number, number, number]): string {
  const points = Array.from({ length: SIZE.width / 10 + 1 }, (_, i) => `${i * 10} ${ridgeY(i * 10, ...shape).toFixed(1)}`);
  return `M0 ${SIZE.height}L${points.join('L')}L${SIZE.width} ${SIZE.height}Z`;
}

const MIDDLE = [205, 66, 4.4] as const;
const PERSON_X = 905;

const RIDGES = [
  { layer: 'far', path: ridge(170, 70, 1.3) },
  { layer: 'middle', path: ridge(...MIDDLE) },
  { layer: 'near', path: ridge(250, 70, 0.4) },
] as const;

/** Hills in haze, and somebody on the near ridge with an antenna. */
export function HillsDrawing() {
  return (
    <svg class="hills" viewBox={`0 0 ${SIZE.width} ${SIZE.height}`} preserveAspectRatio="xMidYMid slice" aria-hidden="true">
      {RIDGES.map(({ layer, path }) => (
        <path key={layer} class={`hills-${layer}`} d={path} />
      ))}
      <g class="hills-person" transform={`translate(${PERSON_X} ${ridgeY(PERSON_X, ...MIDDLE) - 2})`}>
        <circle cx="0" cy="-35" r="5" class="hills-head" />
        <path d="M0 -29V-12M0 -12L-5 4M0 -12L6 4M0 -26L13 -29" />
        <g class="hills-antenna" transform="translate(13 -29) rotate(-14)">
          <path d="M-4 0H34M2 -9V9M16 -8V8M30 -7V7" />
        </g>
      </g>
    </svg>
  );
}
