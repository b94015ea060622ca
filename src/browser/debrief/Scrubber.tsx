import { useComputed } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { BearingRow } from '../../core/debrief/bearings';
import { rowAt, type Timeline } from '../../core/debrief/timeline';
import { clock, signedText } from './charts/chartFrame';
import { atS, type ChosenMoment, choose, chosenMoment, PACES, pace, play, playing, runEndS, seek, seekBy } from './replay';

const STEP_S = 1;
const LONG_STEP_S = 60;

type Marks = { readonly moments: readonly ChosenMoment[]; readonly bearings: readonly BearingRow[] };

/** One scrubber for picture and sound: it stays at the foot of the window while one reads on. */
export function Scrubber({ timeline, moments, bearings, onPlay }: Marks & { readonly timeline: Timeline; readonly onPlay: () => void }) {
  return (
    <section class="scrubber" aria-label="Replay">
      <button
        type="button"
        class="scrubber-play"
        aria-label={playing.value ? 'Pause' : 'Play from here, with sound'}
        title="Space"
        onClick={() => {
          onPlay();
          play();
        }}
      >
        <svg viewBox="0 0 20 20" width="20" height="20" aria-hidden="true">
          {playing.value ? (
            <path d="M5 3h4v14H5zM11 3h4v14h-4z" fill="currentColor" />
          ) : (
            <path d="M5 2.500l12 7.500-12 7.500z" fill="currentColor" />
          )}
        </svg>
      </button>
      <Groove timeline={timeline} moments={moments} bearings={bearings} />
      <Readout timeline={timeline} />
      <div class="scrubber-pace">
        {PACES.map((times) => (
          <button
            key={times}
            type="button"
            class="plain"
            aria-pressed={pace.value === times}
            aria-label={times === 1 ? 'Own pace, with sound' : `${times} times as fast, silent`}
            onClick={() => {
              pace.value = times;
            }}
          >
            {times}×
          </button>
        ))}
      </div>
    </section>
  );
}

function Groove({ timeline, moments, bearings }: Marks & { readonly timeline: Timeline }) {
  const groove = useRef<HTMLDivElement>(null);
  const endS = runEndS();
  const toPointer = ({ clientX }: PointerEvent) => {
    const { left, width } = groove.current!.getBoundingClientRect();
    seek(((clientX - left) / width) * endS);
  };
  const share = (s: number) => `${(100 * s) / Math.max(1, endS)}%`;
  return (
    <div
      class="scrubber-slider"
      role="slider"
      tabIndex={0}
      aria-label="Time in the run"
      aria-valuemin={0}
      aria-valuemax={Math.floor(endS)}
      aria-valuenow={Math.floor(atS.value)}
      aria-valuetext={saidAt(timeline, atS.value)}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        toPointer(event);
      }}
      onPointerMove={(event) => {
        if (event.currentTarget.hasPointerCapture(event.pointerId)) toPointer(event);
      }}
      onKeyDown={(event) => {
        const step = event.shiftKey ? 10 * STEP_S : STEP_S;
        const steps: Readonly<Record<string, number>> = {
          ArrowLeft: -step,
          ArrowDown: -step,
          ArrowRight: step,
          ArrowUp: step,
          PageUp: LONG_STEP_S,
          PageDown: -LONG_STEP_S,
          Home: -endS,
          End: endS,
        };
        const by = steps[event.key];
        if (by === undefined) return;
        event.preventDefault();
        seekBy(by);
      }}
    >
      <div class="scrubber-groove" ref={groove}>
        <div class="scrubber-fill" style={{ width: share(atS.value) }} />
        {bearings.map(({ number, atS: takenS }) => (
          <span key={number} class="scrubber-bearing" style={{ left: share(takenS) }} />
        ))}
        {moments.map((one) => (
          <span
            key={`${one.habit}${one.moment.fromS}${one.moment.what}`}
            class={one.moment.good ? 'scrubber-moment scrubber-good' : 'scrubber-moment'}
            style={{ left: share(one.moment.fromS) }}
            title={`${clock(one.moment.fromS)} ${one.moment.what}`}
            data-chosen={chosenMoment.value?.moment === one.moment}
            onPointerDown={(event) => {
              event.stopPropagation();
              choose(one);
            }}
          />
        ))}
        <div class="scrubber-knob" style={{ left: share(atS.value) }} />
      </div>
    </div>
  );
}

/** What a screen reader says of a time. */
function saidAt(timeline: Timeline, s: number): string {
  const row = rowAt(timeline, s);
  const excess = row < 0 ? null : timeline.excessDb[row]!;
  const heard = row < 0 ? '' : timeline.audible[row] ? ', beep heard' : ', beep not heard';
  const over = excess === null ? '' : `, ${Math.round(Math.abs(excess))} decibels ${excess < 0 ? 'under' : 'over'} least gain`;
  return `${clock(s)}${row < 0 ? '' : `, heading ${Math.round(timeline.headingDeg[row]!)} degrees, gain ${Math.round(timeline.netGainDb[row]!)}`}${over}${heard}`;
}

function Readout({ timeline }: { readonly timeline: Timeline }) {
  const row = useComputed(() => rowAt(timeline, atS.value));
  const known = row.value >= 0;
  const excess = known ? timeline.excessDb[row.value]! : null;
  return (
    <dl class="scrubber-readout">
      <div>
        <dt class="unseen">Time</dt>
        <dd class="number scrubber-time">{clock(atS.value)}</dd>
      </div>
      <div>
        <dt>gain</dt>
        <dd class="number">{known ? signedText(timeline.netGainDb[row.value]!) : '–'}</dd>
      </div>
      <div>
        <dt>excess</dt>
        <dd class="number">{excess === null ? '–' : signedText(excess)}</dd>
      </div>
      <div>
        <dt>heading</dt>
        <dd class="number">{known ? `${String(Math.round(timeline.headingDeg[row.value]!) % 360).padStart(3, '0')}°` : '–'}</dd>
      </div>
      <div class="scrubber-far">
        <dt>tag</dt>
        <dd class="number">
          {known ? Math.round(timeline.distanceM[row.value]!) : '–'} <span class="unit">m</span>
        </dd>
      </div>
    </dl>
  );
}
