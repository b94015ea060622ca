import { type ListenerNow, listenerNow } from '../core/drills/listenerNow';
import { checksIn } from '../core/logbook/book';
import { openBook } from './storage/book';
import { settings } from './storage/settings';

/** Name of the loudspeaker or headphones in use where the browser tells it; empty elsewhere. */
export async function outputDevice(): Promise<string> {
  try {
    const outputs = (await navigator.mediaDevices.enumerateDevices()).filter(({ kind }) => kind === 'audiooutput');
    const chosen = outputs.find(({ deviceId }) => deviceId === 'default') ?? outputs[0];
    return chosen?.label.slice(0, 200) ?? '';
  } catch {
    return ''; // over plain http there are no devices
  }
}

/** Who listens here and now: by the newest hearing check with this loudspeaker, moved by what the volume has been turned since. */
export async function listenerHere(): Promise<ListenerNow> {
  const [device, book] = await Promise.all([outputDevice(), openBook()]);
  const checks = checksIn(book).map(({ device: name, volumeDb, thresholdDb, atMs }) => ({
    device: name,
    volumeDb,
    thresholdDb,
    checkedAt: new Date(atMs).toISOString(),
  }));
  return listenerNow(checks, device, settings.peek().volumeDb);
}
