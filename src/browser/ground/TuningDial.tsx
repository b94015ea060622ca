import { useRef } from 'preact/hooks';
import { act, controlsNow, openRun } from '../currentRun';
import { noteNow } from './noteNow';
import { meterAllowed, sText, sUnitsNow } from './sReading';

/** Hertz for each pixel that the strip is dragged. */
const HZ_PER_PX = 8;
const MARK_HZ = 250;
const WINDOW_HZ = 1_500;

/** The dial: a strip of hertz that slides under a needle, and the pitch of the note while there is one to hear. */
export function TuningDial() {
  const from = useRef<{ readonly x: number; readonly mhz: number } | null>(null);
  const tunedMHz = controlsNow.value?.tunedMHz ?? 0;
  const tagsMHz = openRun.value?.exercise.scenario.tags.map(({ frequencyMHz }) => frequencyMHz) ?? [tunedMHz];
  const tunedHz = Math.round(tunedMHz * 1e6);
  const heard = noteNow.value;
  const tuneBy = (hz: number) => act({ type: 'tune', tunedMHz: tunedMHz + hz / 1e6 });
  const first = Math.ceil((tunedHz - WINDOW_HZ) / MARK_HZ);
  const marks = Array.from({ length: Math.floor((2 * WINDOW_HZ) / MARK_HZ) + 1 }, (_, i) => (first + i) * MARK_HZ);
  return (
    <section class="tuning">
      <div class="tuning-head">
        <h2 class="label">Note</h2>
        <p class="number tuning-number">
          {heard ? Math.round(heard.pitchHz) : '–'}
          <span class="unit"> Hz</span>
        </p>
      </div>
      <div
        class="tuning-strip"
        role="slider"
        tabIndex={0}
        aria-label="Tuning"
        aria-valuemin={Math.round((Math.min(...tagsMHz, tunedMHz) - 0.01) * 1e6)}
        aria-valuemax={Math.round((Math.max(...tagsMHz, tunedMHz) + 0.01) * 1e6)}
        aria-valuenow={tunedHz}
        aria-valuetext={`${tunedMHz.toFixed(4)} megahertz`}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          from.current = { x: event.clientX, mhz: tunedMHz };
        }}
        onPointerMove={(event) => {
          if (!from.current || !event.currentTarget.hasPointerCapture(event.pointerId)) return;
          act({ type: 'tune', tunedMHz: from.current.mhz - ((event.clientX - from.current.x) * HZ_PER_PX) / 1e6 });
        }}
        onPointerUp={() => {
          from.current = null;
        }}
        onKeyDown={(event) => {
          const by = { PageUp: 500, PageDown: -500 }[event.key];
          if (by) {
            event.preventDefault();
            tuneBy(by);
          }
        }}
      >
        <svg viewBox="-100 0 200 40" preserveAspectRatio="none" aria-hidden="true">
          {marks.map((hz) => (
            <path
              key={hz}
              class="tuning-mark"
              d={`M${(((hz - tunedHz) / WINDOW_HZ) * 100).toFixed(2)} 40v${hz % 1_000 === 0 ? -20 : -11}`}
            />
          ))}
        </svg>
        <div class="tuning-needle" />
        <span class="number tuning-mhz">{tunedMHz.toFixed(4)}</span>
        {meterAllowed.value && <span class="number tuning-s">S{sText(sUnitsNow.value)}</span>}
      </div>
    </section>
  );
}
