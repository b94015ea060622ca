import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { DEMONSTRATIONS } from '../../core/listening/catalogue';
import type { Piece } from '../../core/listening/demonstration';
import { wayOf } from '../../core/listening/demonstrationDials';
import { Segments } from '../controls/Segments';
import { soundLossWords } from '../sound/SoundLossLine';
import { unlockedContext } from '../sound/unlock';
import { PictureView } from '../soundRing/PictureView';
import { settings as deviceSettings, stepVolume } from '../storage/settings';
import { ChartView } from './ChartView';
import { EarCheck } from './EarCheck';
import { check, openCheck } from './earCheck';
import { Handout } from './Handout';
import { AllKeys, KeyHints } from './KeyHints';
import { tellNotes } from './notesChannel';
import { compassOn, compassWords, leaveCompass, mayHaveCompass, toggleCompass } from './phoneCompass';
import { RingDial } from './RingDial';
import { GainControl, OtherDials } from './RoomDials';
import { keepAddress } from './roomAddress';
import { press, release, roomKeys } from './roomKeys';
import { beep, fetchSound, startSound } from './roomSound';
import { hearOtherWay, listened, otherWayName, projector, set, settings, show, shown, sounding, spinDegPerS, still } from './roomState';
import { captionWords } from './roomWords';
import { drawings, drawn, workAhead } from './workAhead';

const openNotes = (): void => void open(`${location.pathname}${location.search}#/listen/notes`, 'faintward-notes', 'width=560,height=640');

/** The Listening room: one phenomenon at a time, live. */
export function Room({ onLeave }: { readonly onLeave: () => void }) {
  const keysOpen = useSignal(false);
  useEffect(() => {
    const doors = {
      openNotes,
      toggleKeys: () => {
        keysOpen.value = !keysOpen.peek();
      },
      leave: onLeave,
    };
    const idle = setTimeout(fetchSound, 200);
    if (unlockedContext()) startSound();
    // Any key is gesture enough for the sound.
    const firstKey = () => startSound();
    addEventListener('keydown', firstKey);
    const stops = [
      workAhead(),
      beep(),
      keepAddress(),
      roomKeys(window, doors),
      tellNotes((pressed) => void press(pressed, doors), release),
    ];
    return () => {
      clearTimeout(idle);
      removeEventListener('keydown', firstKey);
      leaveCompass();
      for (const stop of stops) stop();
    };
  }, []);
  const demonstration = shown.value;
  return (
    <div class={projector.value ? 'room room-projector' : 'room'} data-demonstration={demonstration.id}>
      <header class="room-head">
        <div class="room-title">
          <h1>{demonstration.title}</h1>
          <p class="room-scene">{demonstration.scene}</p>
        </div>
        <RoomDeeds onLeave={onLeave} />
      </header>
      <RoomList />
      <main class="room-body">
        <div class="room-see">
          <RingDial names={['ahead', 'behind']} />
          {check.value && <p class="room-covered">The ring is covered while you listen.</p>}
        </div>
        <div class="room-tell">{check.value ? <EarCheck /> : <Telling />}</div>
      </main>
      <footer class="room-foot">
        <GainControl />
        <div class="room-dials">
          <OtherDials />
          <BothWays />
        </div>
        <KeyHints demonstration={demonstration} />
        {keysOpen.value && <AllKeys demonstration={demonstration} />}
      </footer>
      <p class="room-caption" aria-live="polite" data-seen={String(deviceSettings.value.captions)}>
        {sounding.value && !check.value ? captionWords(listened.value) : ''}
      </p>
      {!sounding.value && <SoundGate />}
      <Handout />
    </div>
  );
}

/** The gesture that browsers want before anything may sound, asked for plainly. */
function SoundGate() {
  return (
    <button type="button" class="room-gate primary" onClick={startSound}>
      Start the sound
      <span class="room-gate-how">tap here, or press any key; it begins softly</span>
    </button>
  );
}

function Telling() {
  const now = still.value;
  const demonstration = shown.value;
  return (
    <>
      <p class="room-says" aria-live="polite">
        {demonstration.says(now).map((piece, i) => (
          <Said key={`${i}/${typeof piece === 'string' ? piece : piece.strong}`} piece={piece} />
        ))}
      </p>
      <p class="room-listen-for">{demonstration.listenFor}</p>
      <Drawings />
    </>
  );
}

function Drawings() {
  if (!drawn.value) return <div class="room-drawings room-drawings-coming" aria-busy="true" />;
  return (
    <div class="room-drawings">
      <ChartView chart={drawings.value.chart} />
      <PictureView picture={drawings.value.picture} />
    </div>
  );
}

const Said = ({ piece }: { readonly piece: Piece }) => (typeof piece === 'string' ? <span>{piece}</span> : <strong>{piece.strong}</strong>);

/** Two settings to hear one after the other; the ring of the one not chosen is drawn thin. */
function BothWays() {
  const demonstration = shown.value;
  const way = wayOf(demonstration, settings.value);
  return (
    <div class="room-ways" title={`Thin ring: ${otherWayName.value}`}>
      <span class="room-dial-name">Hear it both ways</span>
      <Segments
        name="Hear it both ways"
        choices={demonstration.ways.map(({ name }, i) => ({ value: i, text: name }))}
        chosen={way ?? -1}
        onChoose={(value) => (value === way ? undefined : way === null ? set(demonstration.ways[value]!.sets) : hearOtherWay())}
      />
    </div>
  );
}

function RoomList() {
  const list = useRef<HTMLElement>(null);
  const id = shown.value.id;
  useEffect(() => {
    // Where the list is one row, the present page is brought into sight without moving the page itself.
    const row = list.current?.querySelector('ol');
    const now = list.current?.querySelector<HTMLElement>('[aria-current]');
    if (row && now) row.scrollLeft = now.offsetLeft - row.offsetLeft - 40;
  }, [id]);
  return (
    <nav ref={list} class="room-list" aria-label="Demonstrations">
      <ol>
        {DEMONSTRATIONS.map((demonstration, i) => (
          <li key={demonstration.id}>
            <button type="button" aria-current={demonstration === shown.value ? 'page' : undefined} onClick={() => show(demonstration)}>
              <span class="number">{i + 1}</span> {demonstration.title}
            </button>
          </li>
        ))}
      </ol>
    </nav>
  );
}

function RoomDeeds({ onLeave }: { readonly onLeave: () => void }) {
  const { volumeDb, muted } = deviceSettings.value;
  return (
    <div class="room-deeds">
      <button type="button" class="room-deed-check" onClick={openCheck}>
        Check by ear
      </button>
      {mayHaveCompass() && (
        <button type="button" class="room-deed-compass" aria-pressed={compassOn.value} onClick={() => void toggleCompass()}>
          Turn with the phone
        </button>
      )}
      <button type="button" class="room-deed-round" onClick={() => (spinDegPerS.value = spinDegPerS.peek() === 0 ? 30 : 0)}>
        {spinDegPerS.value === 0 ? 'Turn round' : 'Stop'}
      </button>
      <button type="button" class="room-deed-wide" onClick={() => (projector.value = true)}>
        Projector
      </button>
      <button type="button" class="room-deed-wide" onClick={openNotes}>
        Notes
      </button>
      <button type="button" class="room-deed-wide" onClick={() => print()}>
        Print
      </button>
      <div class="room-volume">
        <button type="button" class="plain" aria-label="Softer" onClick={() => stepVolume(-1)}>
          −
        </button>
        <output class="number" aria-label="Volume">
          {muted ? 'off' : `${volumeDb} dB`}
        </output>
        <button type="button" class="plain" aria-label="Louder" onClick={() => stepVolume(1)}>
          +
        </button>
      </div>
      <button type="button" class="plain" onClick={onLeave}>
        Leave
      </button>
      <p class="room-compass-words" role="status">
        {compassWords.value || soundLossWords()}
      </p>
    </div>
  );
}
