import { useComputed, useSignal, useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { nearest } from '../../core/listening/soundRing';
import { CloseMark } from '../controls/marks';
import { Slide } from '../controls/Slide';
import { type Beeper, makeBeeper } from '../sound/beeper';
import { RingDrawing } from '../soundRing/RingDrawing';
import { spot } from '../soundRing/ringShape';
import '../soundRing/drawings.css';
import { settings } from '../storage/settings';
import { draft } from './deskState';
import { heardHere, listenAt, listenGainDb, listenHeadingDeg, listening, truthTag } from './truth';

const LEAST_NET_DB = -30;
const MOST_NET_DB = 90;

/** The sound ring and the waves where one listens, and their sound. */
export function ListenHere() {
  const here = heardHere.value;
  const headingDeg = Math.round(listenHeadingDeg.value ?? here?.bestDeg ?? 0) % 360;
  return (
    <section class="desk-listen" aria-label="Listening at a place">
      <button
        type="button"
        class="plain layers-close"
        aria-label="Stop listening"
        onClick={() => {
          listening.value = false;
        }}
      >
        <CloseMark />
      </button>
      <svg viewBox="-132 -132 264 264" role="img" aria-label="Sound ring at the place, with the waves that come there">
        {here && <RingDrawing ring={here.ring} other={null} waves={here.waves} />}
        {here && <path class="desk-listen-heading" d={`M0 0L${spot(headingDeg, 112)}`} />}
      </svg>
      <div class="desk-listen-words">
        {here ? (
          <p class="quiet" role="status">
            <span class="number">{Math.round(here.distanceM)}</span> m off, {here.inSight ? 'in view' : 'out of view'}; loudest{' '}
            <span class="number">{Math.round(here.bestDeg)}</span>°, true <span class="number">{Math.round(here.trueDeg)}</span>°;{' '}
            {here.leastGainDb === null ? (
              'heard at no gain'
            ) : (
              <>
                least gain <span class="number">{Math.round(here.leastGainDb).toString().replace('-', '−')}</span> dB
              </>
            )}
          </p>
        ) : (
          <p class="quiet">{listenAt.value ? 'Working out what comes here …' : 'Point at the map, or move over it with the arrow keys.'}</p>
        )}
        <SlideName name="Gain less attenuation" value={listenGainDb.value} unit=" dB" />
        <Slide
          name="Gain less attenuation"
          value={listenGainDb.value}
          least={LEAST_NET_DB}
          most={MOST_NET_DB}
          step={1}
          markEvery={30}
          said={`${listenGainDb.value} dB`}
          keys="arrows"
          onSet={(db) => {
            listenGainDb.value = db;
          }}
        />
        <SlideName name="Antenna heading" value={headingDeg} unit="°" />
        <Slide
          name="Antenna heading"
          value={headingDeg}
          most={359}
          step={1}
          marks={[
            [0, 'N'],
            [90, 'E'],
            [180, 'S'],
            [270, 'W'],
          ]}
          said={`${headingDeg}°`}
          keys="arrows"
          onSet={(deg) => {
            listenHeadingDeg.value = deg;
          }}
        />
        <Sounding />
      </div>
    </section>
  );
}

function SlideName({ name, value, unit }: { readonly name: string; readonly value: number; readonly unit: string }) {
  return (
    <span class="desk-slide-name">
      {name}
      <output class="number">
        {String(value).replace('-', '−')}
        <span class="unit">{unit}</span>
      </output>
    </span>
  );
}

/** Lets it sound, and beeps as long as it is on. */
function Sounding() {
  const on = useSignal(false);
  const beeper = useRef<Beeper | null>(null);
  const now = useComputed(() => {
    const here = heardHere.value;
    return on.value && here ? nearest(here.ring, listenHeadingDeg.value ?? here.bestDeg) : null;
  });
  useEffect(() => () => beeper.current?.close(), []);
  useSignalEffect(() => {
    const { volumeDb, muted } = settings.value;
    beeper.current?.volume(volumeDb, muted);
  });
  useSignalEffect(() => {
    void now.value;
    beeper.current?.changed();
  });
  const press = () => {
    on.value = !on.value;
    if (beeper.current) return;
    const tag = draft.peek()!.tags[truthTag.peek()]!;
    const made = makeBeeper({ periodS: 60 / tag.pulsesPerMinute, pulseMs: tag.pulseMs, heard: () => now.peek(), onBeat: () => {} });
    const { volumeDb, muted } = settings.peek();
    made.volume(volumeDb, muted);
    made.start();
    beeper.current = made;
  };
  return (
    <div class="desk-deeds">
      <button type="button" aria-pressed={on.value} onClick={press}>
        {on.value ? 'Silence' : 'Let it sound'}
      </button>
      <button
        type="button"
        disabled={listenHeadingDeg.value === null}
        onClick={() => {
          listenHeadingDeg.value = null;
        }}
      >
        Loudest side
      </button>
    </div>
  );
}
