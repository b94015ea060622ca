import { meterAllowed, sText, sUnitsNow } from './sReading';

const UNITS = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12] as const;

/** Holds the last pulse's reading, as a peak meter does; an exercise can take it away. */
export function SMeter() {
  if (!meterAllowed.value) return null;
  const units = sUnitsNow.value;
  return (
    <section class="s-meter">
      <div class="tuning-head">
        <h2 class="label">S-meter</h2>
        <p class="number tuning-number">{sText(units)}</p>
      </div>
      <svg viewBox="0 0 180 40" preserveAspectRatio="none" role="img" aria-label={`S-meter: S${sText(units)}`}>
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
