import { useRef } from 'preact/hooks';
import { toDeg, toRad, wrapBearingDeg } from '../../core/units/angles';
import { act, holdNow, ring } from '../currentRun';
import { SEGMENT_DEG, segmentOf } from '../heardRing';
import { antennaStrokes } from './antennaShape';
import { readDeg } from './measures';
import { bearingText } from './words';

const RING = 84;
const BAR = 26;
/** Loudness that fills a bar of the ring, dB above the threshold. */
const FULL_DB = 50;
const SEGMENTS = Array.from({ length: 360 / SEGMENT_DEG }, (_, i) => i);

const spot = (deg: number, radius: number): string =>
  `${(radius * Math.sin(toRad(deg))).toFixed(2)} ${(-radius * Math.cos(toRad(deg))).toFixed(2)}`;
const bar = (deg: number, from: number, to: number): string => `M${spot(deg, from)}L${spot(deg, to)}`;
const EMPTY = SEGMENTS.map((i) => bar(i * SEGMENT_DEG, RING - 2, RING - 5)).join('');

/** The antenna from above in the sound ring. Drag it round, or use the arrow keys. */
export function AntennaDial() {
  const dial = useRef<HTMLDivElement>(null);
  const hold = holdNow.value;
  if (!hold) return null;
  const point = (event: PointerEvent) => {
    const box = dial.current!.getBoundingClientRect();
    const [dx, dy] = [event.clientX - (box.left + box.width / 2), event.clientY - (box.top + box.height / 2)];
    if (Math.hypot(dx, dy) > 8) act({ type: 'turn', toDeg: wrapBearingDeg(toDeg(Math.atan2(dx, -dy))) });
  };
  return (
    <div
      ref={dial}
      class="dial"
      role="slider"
      tabIndex={0}
      aria-label="Antenna heading"
      aria-valuemin={0}
      aria-valuemax={359}
      aria-valuenow={Math.round(readDeg(hold.headingDeg)) % 360}
      aria-valuetext={`${bearingText(hold.headingDeg)}, held ${hold.rollDeg >= 45 ? 'upright' : 'flat'}`}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        point(event);
      }}
      onPointerMove={(event) => {
        if (event.currentTarget.hasPointerCapture(event.pointerId)) point(event);
      }}
    >
      <svg viewBox="-112 -112 224 224" aria-hidden="true">
        <circle class="dial-face" r={RING} />
        <circle class="dial-hair" r={RING * 0.6} />
        <path class="dial-empty" d={EMPTY} />
        <SoundRing />
        {(['N', 'E', 'S', 'W'] as const).map((letter, i) => (
          <text key={letter} class="dial-letter" transform={`translate(${spot(90 * i - readDeg(0), 105)})`}>
            {letter}
          </text>
        ))}
        <g transform={`rotate(${hold.headingDeg})`}>
          <path class="dial-pointer" d={`M0 ${-RING - 2}l-5.5 -9h11z`} />
          {antennaStrokes(hold.antenna, hold.rollDeg).map(({ from, to, boom }) => (
            <path
              key={`${from}/${to}`}
              class={boom ? 'dial-boom' : 'dial-element'}
              d={`M${from[1] * 25} ${-from[0] * 25}L${to[1] * 25} ${-to[0] * 25}`}
            />
          ))}
        </g>
      </svg>
    </div>
  );
}

/** Bars grow inward with loudness; what is flat out also has ticks outside the ring. */
function SoundRing() {
  const marks = ring.value;
  const bars = marks.map(({ headingDeg, loudnessDb }) => {
    const share = Math.min(1, Math.max(0.16, loudnessDb / FULL_DB));
    return bar(segmentOf(headingDeg) * SEGMENT_DEG, RING - 2, RING - 2 - BAR * share);
  });
  const ticks = marks
    .filter(({ flatOut }) => flatOut)
    .map(({ headingDeg }) => bar(segmentOf(headingDeg) * SEGMENT_DEG, RING + 4, RING + 10));
  return (
    <g>
      <path class="dial-heard" d={bars.join('')} />
      <path class="dial-flat-out" d={ticks.join('')} />
    </g>
  );
}
