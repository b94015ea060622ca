import { effect } from '@preact/signals';
import type { Settings } from '../../core/listening/settings';
import type { Press } from './roomKeys';
import { settings, shown } from './roomState';

/** What the room tells the instructor's window, and what that window asks of the room. */
export type FromRoom = { readonly type: 'room'; readonly id: string; readonly settings: Settings };
export type FromNotes =
  | { readonly type: 'hello' }
  | ({ readonly type: 'press' } & Press)
  | { readonly type: 'release'; readonly key: string };

const NAME = 'faintward-listening';

export const openChannel = (): BroadcastChannel | null => (typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel(NAME));

/** Tells every instructor's window what the room shows, and hands over the keys pressed there. @returns stops */
export function tellNotes(onPress: (press: Press) => void, onRelease: (key: string) => void): () => void {
  const channel = openChannel();
  if (!channel) return () => {};
  const tell = () => channel.postMessage({ type: 'room', id: shown.peek().id, settings: settings.peek() } satisfies FromRoom);
  channel.onmessage = ({ data }: MessageEvent<FromNotes | FromRoom>) => {
    if (data.type === 'hello') tell();
    else if (data.type === 'press') onPress(data);
    else if (data.type === 'release') onRelease(data.key);
  };
  const stop = effect(() => {
    void [shown.value, settings.value];
    tell();
  });
  return () => {
    stop();
    channel.close();
  };
}
