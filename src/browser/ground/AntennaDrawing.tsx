import type { Antenna } from '../../core/antenna/antenna';
import type { WireChain } from '../../core/antenna/wireChain';

/** Room for the drawing, in its own units. */
const WIDE = 150;
const HIGH = 112;
const EDGE = 9;
/** Lengths that a scale bar may stand for, metres. */
const BARS_M = [2, 1, 0.5, 0.2, 0.1, 0.05, 0.02];
/** A rod thinner than this could not be seen. */
const THINNEST = 1.6;

/** The antenna's own wires to scale, in its plane of elements: forward to the right, with a bar of so many metres under it. */
export function AntennaDrawing({ antenna, designMHz }: { readonly antenna: Antenna; readonly designMHz: number }) {
  const wires = antenna.wires(designMHz);
  const spots = wires.flatMap(({ corners }) => corners);
  const [backM, frontM] = [Math.min(...spots.map(([x]) => x)), Math.max(...spots.map(([x]) => x))];
  const [lowM, highM] = [Math.min(...spots.map(([, y]) => y)), Math.max(...spots.map(([, y]) => y))];
  const perM = Math.min((WIDE - 2 * EDGE) / Math.max(frontM - backM, 0.01), (HIGH - 34 - EDGE) / (highM - lowM));
  const across = (x: number) => WIDE / 2 + (x - (backM + frontM) / 2) * perM;
  const up = (y: number) => (HIGH - 22) / 2 - (y - (lowM + highM) / 2) * perM;
  const barM = BARS_M.find((metres) => metres * perM <= WIDE / 2) ?? BARS_M.at(-1)!;
  return (
    <svg class="antenna-drawing" viewBox={`0 0 ${WIDE} ${HIGH}`} aria-hidden="true">
      {antenna.leastMHz > 0 && <path class="antenna-boom" d={`M${across(backM) - 4} ${up(0)}H${across(frontM) + 4}`} />}
      {wires.map((wire) => (
        <path
          key={wire.corners.join()}
          class="antenna-wire"
          stroke-width={Math.max(THINNEST, 2 * wire.radiusM * perM)}
          d={wirePath(wire, across, up)}
        />
      ))}
      {wires
        .filter(({ drive }) => drive)
        .map((wire) => {
          const [x, y] = fedAt(wire);
          return <circle key={`${x}/${y}`} class="antenna-feed" cx={across(x)} cy={up(y)} r={2.8} />;
        })}
      <path class="antenna-bar" d={`M${WIDE / 2 - (barM * perM) / 2} ${HIGH - 20}v3h${barM * perM}v-3`} />
      <text class="antenna-bar-text" x={WIDE / 2} y={HIGH - 3}>
        {barM} m
      </text>
    </svg>
  );
}

function wirePath({ corners, closed }: WireChain, across: (x: number) => number, up: (y: number) => number): string {
  return `M${corners.map(([x, y]) => `${across(x).toFixed(2)} ${up(y).toFixed(2)}`).join('L')}${closed ? 'Z' : ''}`;
}

/** Where the feed line joins: the fed corner, or a rod's middle. */
function fedAt({ corners, drive }: WireChain): readonly [number, number] {
  const corner = drive?.atCorner === undefined ? undefined : corners[drive.atCorner];
  if (corner) return [corner[0], corner[1]];
  const [from, to] = [corners[0]!, corners.at(-1)!];
  return [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
}
