import { useRef } from 'preact/hooks';
import type { Heard } from '../../core/listening/air';
import { toDeg } from '../../core/units/angles';
import { beepWords } from '../soundRing/beepWords';
import { RingDrawing } from '../soundRing/RingDrawing';
import { FLAT_OUT_R, radiusOf, spot } from '../soundRing/ringShape';
import { beat, listened, otherRing, otherWayName, set, settings, spinDegPerS } from './roomState';
import { drawn } from './workAhead';

/** The ring with the antenna in it. Drag it round with a thumb, or hold the arrow keys. */
export function RingDial({ names }: { readonly names: readonly [string, string] }) {
  const dial = useRef<HTMLDivElement>(null);
  const { ring, now, air } = listened.value;
  const { headingDeg, rollDeg } = settings.value;
  const point = (event: PointerEvent) => {
    const box = dial.current!.getBoundingClientRect();
    const [dx, dy] = [event.clientX - (box.left + box.width / 2), event.clientY - (box.top + box.height / 2)];
    if (Math.hypot(dx, dy) < 8) return;
    spinDegPerS.value = 0;
    set({ headingDeg: toDeg(Math.atan2(dx, -dy)) });
  };
  return (
    <div
      ref={dial}
      class="room-ring"
      role="slider"
      tabIndex={0}
      aria-label="Antenna heading"
      aria-valuemin={0}
      aria-valuemax={359}
      aria-valuenow={headingDeg}
      aria-valuetext={`${headingDeg} degrees, ${beepWords(now)}`}
      data-ring={ring.map((heard) => `${heard.levelDb.toFixed(1)}${heard.audible ? '' : '-'}`).join(' ')}
      data-now-db={now.levelDb.toFixed(2)}
      data-audible={String(now.audible)}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        point(event);
      }}
      onPointerMove={(event) => {
        if (event.currentTarget.hasPointerCapture(event.pointerId)) point(event);
      }}
    >
      <svg viewBox="-128 -128 256 256" aria-hidden="true">
        <RingDrawing ring={ring} other={drawn.value ? otherRing.value : null} waves={air.waves} />
        <Antenna headingDeg={headingDeg} rollDeg={rollDeg} now={now} />
        <RingWords names={names} ring={ring} thin={otherWayName.value.toLowerCase()} />
      </svg>
    </div>
  );
}

function RingWords({
  names,
  ring,
  thin,
}: {
  readonly names: readonly [string, string];
  readonly ring: readonly Heard[];
  readonly thin: string;
}) {
  const justHeard = radiusOf(ring[0]!.thresholdDb);
  return (
    <g>
      <text class="ring-side" x="-126" y="-116">
        {names[0]}
      </text>
      <text class="ring-side" x="-126" y="125">
        {names[1]}
      </text>
      <text class="ring-note" x="126" y="-110" text-anchor="end">
        flat out
      </text>
      <path class="ring-lead" d={`M96 -106L${spot(42, FLAT_OUT_R + 1)}`} />
      <text class="ring-note" x="126" y="90" text-anchor="end">
        just heard
      </text>
      <path class="ring-lead" d={`M92 80L${spot(134, justHeard + 1)}`} />
      <text class="ring-note ring-thin" x="126" y="113" text-anchor="end">
        thin line:
      </text>
      <text class="ring-note" x="126" y="125" text-anchor="end">
        {thin}
      </text>
    </g>
  );
}

/** Boom and rods seen from above, the ray ahead, and this beep's place on it. */
function Antenna({ headingDeg, rollDeg, now }: { readonly headingDeg: number; readonly rollDeg: number; readonly now: Heard }) {
  // Upright rods are seen end on.
  const rod = (y: number, half: number) => (rollDeg >= 45 ? `M0 ${y}h0.01` : `M${-half} ${y}H${half}`);
  const beatNow = beat.value;
  return (
    <g transform={`rotate(${headingDeg})`}>
      <path class="antenna-ray" d={`M0 -16V${-FLAT_OUT_R}`} />
      <path class="antenna-boom" d="M0 13V-15" />
      <path class={rollDeg >= 45 ? 'antenna-rods antenna-rods-upright' : 'antenna-rods'} d={`${rod(9, 9)}${rod(-2, 8)}${rod(-13, 7)}`} />
      <g transform={`translate(0 ${-radiusOf(now.levelDb)})`}>
        <circle key={beatNow} class={now.audible ? 'antenna-beep' : 'antenna-hush'} r="5.500" />
      </g>
    </g>
  );
}
