import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { DEMONSTRATIONS } from '../../core/listening/catalogue';
import { type FromNotes, type FromRoom, openChannel } from './notesChannel';

/** The instructor's own window: what to say, beside what the room sees. Its keys drive the room. */
export function NotesWindow() {
  const room = useSignal<FromRoom | null>(null);
  useEffect(() => {
    const channel = openChannel();
    if (!channel) return;
    channel.onmessage = ({ data }: MessageEvent<FromRoom | FromNotes>) => {
      if (data.type === 'room') room.value = data;
    };
    const send = (message: FromNotes) => channel.postMessage(message);
    send({ type: 'hello' });
    const down = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      send({ type: 'press', key: event.key, shift: event.shiftKey, repeat: event.repeat });
      event.preventDefault();
    };
    const up = (event: KeyboardEvent) => send({ type: 'release', key: event.key });
    addEventListener('keydown', down);
    addEventListener('keyup', up);
    return () => {
      removeEventListener('keydown', down);
      removeEventListener('keyup', up);
      channel.close();
    };
  }, []);
  const now = DEMONSTRATIONS.find(({ id }) => id === room.value?.id);
  const next = now && DEMONSTRATIONS[(DEMONSTRATIONS.indexOf(now) + 1) % DEMONSTRATIONS.length];
  return (
    <main class="notes">
      <p class="quiet">Instructor’s notes. The room does not see this window; its keys drive the room.</p>
      {now && room.value ? (
        <>
          <h1>{now.title}</h1>
          <p class="notes-state number">
            {room.value.settings.gainDb} dB, antenna {room.value.settings.headingDeg}°
          </p>
          <ol class="notes-points">
            {now.talkingPoints.map((point) => (
              <li key={point}>{point}</li>
            ))}
          </ol>
          {now.caution && <p>{now.caution}</p>}
          <p class="quiet">Next: {next!.title}</p>
        </>
      ) : (
        <p>Open the Listening room in another window of this browser.</p>
      )}
    </main>
  );
}
