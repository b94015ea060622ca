import { useComputed, useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { type Poses, posesEndS } from '../../core/debrief/poses';
import { offTheTag, type Timeline } from '../../core/debrief/timeline';
import { Segments } from '../controls/Segments';
import { TimeChart, type TimeLine } from './charts/TimeChart';
import { atS, chosenMoment, seek } from './replay';
import { TimeTable } from './TimeTable';

const WINDOWS = [
  { value: 0, text: 'Whole run' },
  { value: 300, text: '5 min' },
  { value: 60, text: '1 min' },
];

const SIDES = ['behind', 'left', 'at it', 'right', 'behind'];

/** Gain against least gain, loudness, and heading over time, one above the other on one time axis. */
export function GainPart({ timeline, poses }: { readonly timeline: Timeline; readonly poses: Poses }) {
  const windowS = useSignal(0);
  const endS = posesEndS(poses);
  // The window moves on by halves, so that it does not slide with every frame.
  const fromS = useComputed(() => {
    const width = windowS.value;
    if (width === 0 || width >= endS) return 0;
    return Math.min(endS - width, Math.max(0, (Math.floor(atS.value / (width / 2)) - 0.5) * (width / 2)));
  });
  const span = useMemo(
    () => ({ fromS: fromS.value, toS: windowS.value === 0 ? endS : Math.min(endS, fromS.value + windowS.value) }),
    [fromS.value, windowS.value, endS],
  );
  const lines = useMemo(() => linesOf(timeline), [timeline]);
  const stretch = chosenMoment.value?.moment ?? null;
  const shared = { timeS: timeline.timeS, span, stretch, atS, onSeek: seek };
  return (
    <>
      <Segments
        name="Time shown"
        choices={WINDOWS}
        chosen={windowS.value}
        onChoose={(s) => {
          windowS.value = s;
        }}
      />
      <h3 class="chart-title">
        Gain against least gain <span class="unit">dB</span>
      </h3>
      <TimeChart
        {...shared}
        said="Gain in use and least gain over time"
        lines={lines.gain}
        range={lines.gainRange}
        splits={[-30, 0, 30, 60, 90]}
        filled
        tall
      />
      <h3 class="chart-title">
        Loudness <span class="unit">dB over just heard</span>
      </h3>
      <TimeChart {...shared} said="Loudness over time" lines={lines.loudness} range={[-30, 60]} splits={[-30, 0, 30, 60]} level={0} />
      <h3 class="chart-title">
        Heading <span class="unit">from the direction of the tag</span>
      </h3>
      <TimeChart
        {...shared}
        said="Heading of the antenna and the loudest side over time, from the direction of the tag"
        lines={lines.heading}
        range={[-180, 180]}
        splits={[-180, -90, 0, 90, 180]}
        tell={(deg) => SIDES[deg / 90 + 2] ?? ''}
        level={0}
        tall
      />
      <TimeTable timeline={timeline} />
    </>
  );
}

function linesOf(timeline: Timeline): {
  readonly gain: readonly TimeLine[];
  readonly gainRange: readonly [number, number];
  readonly loudness: readonly TimeLine[];
  readonly heading: readonly TimeLine[];
} {
  const { netGainDb, leastGainDb, loudnessDb, audible, headingDeg, trueBearingDeg, loudestDeg } = timeline;
  const least = Math.min(0, ...netGainDb, ...leastGainDb.filter((db) => db !== null));
  return {
    gain: [
      { name: 'gain in use', shortName: 'in use', colour: 'ink', values: netGainDb },
      { name: 'least gain', shortName: 'least', colour: 'truth', values: leastGainDb, dashed: true },
    ],
    gainRange: [Math.max(-32, Math.floor(least / 10) * 10 - 2), 90],
    loudness: [
      { name: 'heard', colour: 'sound', values: loudnessDb.map((db, i) => (audible[i] ? Math.min(60, db) : null)), points: 3.5 },
      {
        name: 'not heard',
        shortName: 'not',
        colour: 'ink-2',
        values: loudnessDb.map((db, i) => (audible[i] ? null : Math.max(-30, db))),
        points: 3.5,
      },
    ],
    heading: [
      { name: 'loudest side', shortName: 'loudest', colour: 'truth', values: offTheTag(loudestDeg, trueBearingDeg), points: 2 },
      { name: 'antenna', colour: 'sound', values: offTheTag(headingDeg, trueBearingDeg), points: 3 },
    ],
  };
}
