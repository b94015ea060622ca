import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Scenario } from '../../core/scenario/schema';
import { clock } from '../../core/technique/habit';
import { Segments } from '../controls/Segments';
import { Slide } from '../controls/Slide';
import { currentPalette } from '../design/palette';
import { LookButtons } from '../map/LookButtons';
import { settings } from '../storage/settings';
import { type Land, openLand } from '../workers/openLand';
import { exerciseNow, scenarios } from './clubTable';
import { frontStroke } from './paintTracks';
import { atS, endS, inFront, PACES, pace, pick, play, playing, runClub, seek, walked } from './tracks';
import { openTracksPicture, type TracksPicture } from './tracksPicture';

/** Everybody's way on one map, and one clock that plays them together. */
export function TracksMap({ landless }: { readonly landless: (digest: string) => Scenario | null }) {
  const frame = useRef<HTMLDivElement>(null);
  const ground = useRef<HTMLCanvasElement>(null);
  const above = useRef<HTMLCanvasElement>(null);
  const picture = useRef<TracksPicture | null>(null);
  const land = useSignal<{ readonly digest: string; readonly land: Land } | null>(null);
  const { exercise } = exerciseNow.value!;
  const scenario = scenarios.value.get(exercise.digest) ?? landless(exercise.digest);
  const landNow = land.value?.digest === exercise.digest ? land.value.land : null;
  useEffect(() => runClub(), []);
  useEffect(() => {
    let wanted = true;
    if (scenario)
      void openLand(scenario, () => {}).then(
        (made) => {
          if (wanted) land.value = { digest: exercise.digest, land: made };
        },
        // Ways on bare paper still compare: a ground that can't be made here costs no more than itself.
        () => {},
      );
    return () => {
      wanted = false;
    };
  }, [exercise.digest, scenario !== null]);
  useEffect(() => {
    const opened = openTracksPicture({ frame: frame.current!, ground: ground.current!, above: above.current! }, landNow);
    picture.current = opened;
    return opened.close;
  }, [exercise.digest, landNow]);
  return (
    <section class="club-map" aria-label="Tracks">
      <div class="club-map-frame">
        <div class="run-map" ref={frame} role="img" aria-label={saidMap()}>
          <canvas key={`${exercise.digest}${landNow ? '' : ' without land'}`} ref={ground} />
          <canvas ref={above} />
        </div>
        <LookButtons zoom={(factor) => picture.current?.zoom(factor)} whole={() => picture.current?.whole()} wholeSaid="All ways" />
      </div>
      {!scenario && <p class="quiet">The table alone has no ground: with one run file of this exercise its land is drawn.</p>}
      <FrontKey />
      <div class="club-clock">
        <button type="button" class="club-play" onClick={play}>
          {playing.value ? 'Pause' : 'Play together'}
        </button>
        <Slide
          name="Time since each began"
          value={Math.floor(atS.value)}
          most={Math.max(1, Math.ceil(endS.value))}
          step={1}
          markEvery={markEvery(endS.value)}
          said={clock(atS.value)}
          keys="arrows"
          onSet={seek}
        />
        <output class="number club-time">{clock(atS.value)}</output>
        <Segments
          name="Pace"
          choices={PACES.map((times) => ({ value: times, text: `${times}×`, said: `${times} times as fast` }))}
          chosen={pace.value}
          onChoose={(times) => {
            pace.value = times;
          }}
        />
      </div>
    </section>
  );
}

/** Marks would be seconds that nobody reads: none but the beginning. */
const markEvery = (end: number): number => Math.max(2, 2 * Math.ceil(end));

/** Who is in front, each beside the line; a press sends back. */
function FrontKey() {
  void settings.value.palette;
  const palette = currentPalette();
  const rest = walked.value.length - inFront.value.length;
  return (
    <ul class="club-front">
      {inFront.value.map((row, i) => {
        const { colour, width, dash } = frontStroke(i, palette);
        return (
          <li key={row.run}>
            <button type="button" class="plain" aria-pressed={true} title="Put back" onClick={() => pick(row.run)}>
              <svg viewBox="0 0 44 10" width="44" height="10" aria-hidden="true">
                <path
                  d="M3 5h38"
                  stroke={colour}
                  stroke-width={width}
                  stroke-linecap="round"
                  stroke-dasharray={dash?.join(' ') ?? 'none'}
                />
              </svg>
              {row.name || 'no name'}
            </button>
          </li>
        );
      })}
      {rest > 0 && (
        <li class="quiet">
          thin: {rest} {rest === 1 ? 'other' : 'others'}
        </li>
      )}
    </ul>
  );
}

function saidMap(): string {
  const names = inFront.value.map(({ name }) => name || 'no name').join(', ');
  return `Map with the ways of ${walked.value.length} runs, start and tags${names && `; in front ${names}`}.`;
}
