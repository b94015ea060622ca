import { lastPulse, openRun, wholeSecond } from '../currentRun';

const UNITS = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12] as const;

/** Holds the last pulse's reading, as a peak meter does; an exercise can take it away. */
export function SMeter() {
  if (!openRun.value?.exercise.scenario.aids.sMeter) return null;
  const heard = lastPulse.value;
  const units = heard && wholeSecond.value - heard.atS < 3 ? heard.sUnits : 0;
  const said = units > 9 ? `S9 plus ${Math.round((units - 9) * 6)} dB` : `S${Math.round(units)}`;
  return (
    <section class="s-meter">
      <div class="tuning-head">
        <h2 class="label">S-meter</h2>
        <p class="number tuning-number">{units > 9 ? `9+${Math.round((units - 9) * 6)}` : Math.round(units)}</p>
      </div>
      <svg viewBox="0 0 180 40" preserveAspectRatio="none" role="img" aria-label={`S-meter: ${said}`}>
        {UNITS.map((unit, i) => {
          const height = 8 + i * 2.6;
          return (
            <rect
              key={unit}
              class={units >= unit - 0.5 ? 's-on' : 's-off'}
              x={i * 15 + 1}
              y={39 - height}
              width={11.5}
              height={height}
              rx={1}
            />
          );
        })}
      </svg>
    </section>
  );
}
