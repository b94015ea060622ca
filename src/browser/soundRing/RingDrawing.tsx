import type { Heard } from '../../core/listening/air';
import type { Wave } from '../../core/radio/wave';
import { fieldSquared } from '../../core/radio/waveVector';
import { turnDeg } from '../../core/units/angles';
import { FLAT_OUT_R, flatOutTicks, heardArea, outline, radiusOf, spot, stretches } from './ringShape';

/** Waves weaker than this against the strongest are not drawn, dB. */
const DRAWN_DB = 24;
const FROM_R = 127;
const ONE_SIDE_DEG = 5;

type Shown = {
  readonly ring: readonly Heard[];
  readonly other: readonly Heard[] | null;
  readonly waves: readonly Wave[];
};

/** The sound ring: level outward, one scale at every gain; heard strong, not heard pale, flat out with ticks outside. */
export function RingDrawing({ ring, other, waves }: Shown) {
  const threshold = ring[0]!.thresholdDb;
  const justHeard = radiusOf(threshold);
  return (
    <g class="ring">
      <circle class="ring-hiss" r={justHeard} />
      <circle class="ring-hair" r={radiusOf(-44)} />
      <circle class="ring-hair" r={radiusOf(-22)} />
      <circle class="ring-edge" r={FLAT_OUT_R} />
      <path class="ring-heard" d={heardArea(ring)} />
      <path class="ring-pale" d={stretches(ring, false)} />
      {other && <path class="ring-other" d={outline(other)} />}
      <path class="ring-strong" d={stretches(ring, true)} />
      <circle class="ring-threshold" r={justHeard} />
      <path class="ring-ticks" d={flatOutTicks(ring)} />
      <Waves waves={waves} />
    </g>
  );
}

/** Where the waves come from: dashed in the colour of truth, longer for stronger ones. */
function Waves({ waves }: { readonly waves: readonly Wave[] }) {
  const strongest = Math.max(...waves.map(fieldSquared));
  const seen = waves
    .map((wave) => ({ wave, downDb: 10 * Math.log10(strongest / fieldSquared(wave)) }))
    .filter(({ wave, downDb }) => wave.kind !== 'scatter' && downDb < DRAWN_DB)
    .sort((a, b) => a.downDb - b.downDb);
  // Of waves from one side the strongest stands for all.
  const drawn = seen.filter(
    ({ wave }, i) => !seen.slice(0, i).some((other) => Math.abs(turnDeg(other.wave.azimuthDeg, wave.azimuthDeg)) < ONE_SIDE_DEG),
  );
  return (
    <g>
      {drawn.map(({ wave, downDb }, i) => {
        const length = 15 * (1 - downDb / (DRAWN_DB + 8));
        return (
          <g key={`${i}/${wave.kind}`} class="ring-wave">
            <path class="ring-wave-way" d={`M${spot(wave.azimuthDeg, FROM_R)}L${spot(wave.azimuthDeg, FROM_R - length)}`} />
            <path
              class="ring-wave-head"
              transform={`rotate(${wave.azimuthDeg}) translate(0 ${-(FROM_R - length)})`}
              d="M0 5L-4.500 -3H4.500Z"
            />
          </g>
        );
      })}
    </g>
  );
}
