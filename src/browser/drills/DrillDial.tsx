import { useRef } from 'preact/hooks';
import { toDeg, toRad } from '../../core/units/angles';
import { beepWords } from '../soundRing/beepWords';
import { RingDrawing } from '../soundRing/RingDrawing';
import { FLAT_OUT_R, radiusOf, spot } from '../soundRing/ringShape';
import { beat, heardSoFar, hinted, now, reachable, ring, set, settings, spinDegPerS, stage, trial, truthShown } from './drillState';

const POINTS = [
  [0, 'N'],
  [90, 'E'],
  [180, 'S'],
  [270, 'W'],
] as const;

/** The antenna on its dial. Drag it round with a thumb, or hold the arrow keys; the truth is drawn in when it may be seen. */
export function DrillDial() {
  const dial = useRef<HTMLDivElement>(null);
  const { headingDeg } = settings.value;
  const turnable = reachable('headingDeg') || truthShown.value;
  const point = (event: PointerEvent) => {
    const box = dial.current!.getBoundingClientRect();
    const [dx, dy] = [event.clientX - (box.left + box.width / 2), event.clientY - (box.top + box.height / 2)];
    if (!turnable || Math.hypot(dx, dy) < 8) return;
    spinDegPerS.value = 0;
    set({ headingDeg: toDeg(Math.atan2(dx, -dy)) });
  };
  const heard = now.value;
  // Words of what is heard would answer for the ear; they come with the truth.
  const said = truthShown.value && heard ? `, ${beepWords(heard)}` : '';
  return (
    <div
      ref={dial}
      class={turnable ? 'drill-dial' : 'drill-dial drill-dial-still'}
      role="slider"
      tabIndex={0}
      aria-label="Antenna heading"
      aria-valuemin={0}
      aria-valuemax={359}
      aria-valuenow={Math.round(headingDeg)}
      aria-valuetext={`${Math.round(headingDeg)} degrees${said}`}
      aria-disabled={!turnable}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        point(event);
      }}
      onPointerMove={(event) => {
        if (event.currentTarget.hasPointerCapture(event.pointerId)) point(event);
      }}
    >
      <svg viewBox="-134 -134 268 268" aria-hidden="true">
        <Compass />
        {ring.value && trial.value ? (
          <RingDrawing ring={ring.value} other={null} waves={trial.value.air(settings.value).waves} />
        ) : (
          <circle class="ring-edge" r={FLAT_OUT_R} />
        )}
        {hinted.value && stage.value === 'trial' && <SoFar />}
        <Antenna />
        <Marks />
      </svg>
    </div>
  );
}

function Compass() {
  const ticks = Array.from({ length: 36 }, (_, i) => 10 * i)
    .map((deg) => `M${spot(deg, FLAT_OUT_R + (deg % 30 === 0 ? 7 : 4))}L${spot(deg, FLAT_OUT_R + 1)}`)
    .join('');
  return (
    <g>
      <path class="dial-ticks" d={ticks} />
      {POINTS.map(([deg, name]) => {
        const [x, y] = spot(deg, FLAT_OUT_R + 17).split(' ');
        return (
          <text key={name} class="dial-point" x={x} y={y}>
            {name}
          </text>
        );
      })}
    </g>
  );
}

/** How far a name reaches from its middle towards the edge: half its width beside north and south, half its height there. */
const halfWidth = (name: string, deg: number): number =>
  Math.max(3.8 * name.length * Math.abs(Math.sin(toRad(deg))), 7 * Math.abs(Math.cos(toRad(deg))));

/** Headings named in the question. */
function Marks() {
  const named = trial.value?.marks?.(settings.value) ?? [];
  return (
    <g>
      {named.map(({ name, deg }) => {
        const [x, y] = spot(deg, FLAT_OUT_R - 10 - halfWidth(name, deg)).split(' ');
        return (
          <g key={name}>
            <path class="dial-mark" d={`M${spot(deg, FLAT_OUT_R + 6)}L${spot(deg, FLAT_OUT_R - 4)}`} />
            <text class="dial-mark-name" x={x} y={y}>
              {name}
            </text>
          </g>
        );
      })}
    </g>
  );
}

/** What was heard since the gain was set, as dots at their loudness. */
function SoFar() {
  return (
    <g>
      {heardSoFar.value.map((heard) => {
        const [x, y] = spot(heard.headingDeg, radiusOf(heard.levelDb)).split(' ');
        return <circle key={heard.headingDeg} class="dial-heard" cx={x} cy={y} r="2.6" />;
      })}
    </g>
  );
}

/** Boom and rods from above, the ray ahead; the beep's place on it only with the truth. */
function Antenna() {
  const { headingDeg, rollDeg } = settings.value;
  const rod = (y: number, half: number) => (rollDeg >= 45 ? `M0 ${y}h0.01` : `M${-half} ${y}H${half}`);
  const heard = now.value;
  const beatNow = beat.value;
  return (
    <g transform={`rotate(${headingDeg})`}>
      <path class="antenna-ray" d={`M0 -16V${-FLAT_OUT_R}`} />
      <path class="antenna-boom" d="M0 13V-15" />
      <path class={rollDeg >= 45 ? 'antenna-rods antenna-rods-upright' : 'antenna-rods'} d={`${rod(9, 9)}${rod(-2, 8)}${rod(-13, 7)}`} />
      {truthShown.value && heard && (
        <g transform={`translate(0 ${-radiusOf(heard.levelDb)})`}>
          <circle key={beatNow} class={heard.audible ? 'antenna-beep' : 'antenna-hush'} r="5.500" />
        </g>
      )}
    </g>
  );
}
