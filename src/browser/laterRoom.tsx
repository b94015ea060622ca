import { signal } from '@preact/signals';
import type { ComponentType } from 'preact';

type Fetched<P> = { readonly Made: ComponentType<P> } | 'fetching' | 'missing' | null;

type LaterRoom<P> = ComponentType<P> & {
  /** Fetches the code before the room is opened. @returns is it there */
  readonly ahead: () => Promise<boolean>;
};

type Missing = ComponentType<{ readonly onAgain: () => void }>;

/**
 * A room whose code comes when it is first opened, so that the start page is there sooner. One that does not come can be asked for again;
 * `Missing` says so, for a part of a page in fewer words.
 */
export function laterRoom<P extends object>(fetchRoom: () => Promise<ComponentType<P>>, Missing: Missing = RoomMissing): LaterRoom<P> {
  const room = signal<Fetched<P>>(null);
  let coming = Promise.resolve(false);
  const fetchNow = () => {
    room.value = 'fetching';
    coming = fetchRoom().then(
      (Made) => {
        room.value = { Made };
        return true;
      },
      () => {
        room.value = 'missing';
        return false;
      },
    );
  };
  const ahead = () => {
    if (room.peek() === null) fetchNow();
    return coming;
  };
  const Room = (props: P) => {
    void ahead();
    const made = room.value;
    if (made === null || made === 'fetching') return null;
    if (made === 'missing') return <Missing onAgain={fetchNow} />;
    return <made.Made {...props} />;
  };
  return Object.assign(Room, { ahead });
}

/** The same for a part of a page, which the rest of it stands around. */
export const PartMissing: Missing = ({ onAgain }) => (
  <p role="alert">
    This part did not come.{' '}
    <button type="button" onClick={onAgain}>
      Try again
    </button>
  </p>
);

function RoomMissing({ onAgain }: { readonly onAgain: () => void }) {
  return (
    <main class="opening">
      <div class="opening-inner">
        <h1>This page did not come</h1>
        <p role="alert">
          Its code could not be fetched. Without a network a page opens only after the program has been opened once with one. Nothing is
          lost: runs and logbook are kept on this device.
        </p>
        <p class="part-deeds">
          <button type="button" onClick={onAgain}>
            Try again
          </button>
          <a href="#/">Start page</a>
        </p>
      </div>
    </main>
  );
}
