import { effect } from '@preact/signals';
import { DEMONSTRATIONS } from '../../core/listening/catalogue';
import type { Demonstration } from '../../core/listening/demonstration';
import { dialsOf } from '../../core/listening/demonstrationDials';
import { gainOver, overDbOf } from '../../core/listening/gainOver';
import { readSettings, type Settings, settingsText } from '../../core/listening/settings';
import { projector, settings, show, shown } from './roomState';

/**
 * Addresses of the room: `#/listen/back-signal?gainDb=12&projector`, and `#/listen/notes` for the instructor's window. A debrief gives the
 * gain as `overDb`, so far over least gain.
 */
const ROOM = '#/listen';

export type RoomAddress =
  | { readonly place: 'elsewhere' }
  | { readonly place: 'notes' }
  | { readonly place: 'room'; readonly demonstration: Demonstration; readonly settings: Settings; readonly projector: boolean };

export function roomAddress(hash: string): RoomAddress {
  if (hash !== ROOM && !hash.startsWith(`${ROOM}/`) && !hash.startsWith(`${ROOM}?`)) return { place: 'elsewhere' };
  const [path = '', query = ''] = hash.split('?');
  const id = path.split('/')[2] ?? '';
  if (id === 'notes') return { place: 'notes' };
  const demonstration = DEMONSTRATIONS.find((one) => one.id === id) ?? DEMONSTRATIONS[0]!;
  const read = readSettings(query, demonstration.start, dialsOf(demonstration));
  const overDb = overDbOf(query);
  return {
    place: 'room',
    demonstration,
    settings: overDb === null ? read : gainOver(demonstration, read, overDb),
    projector: query.split('&').includes('projector'),
  };
}

export function addressOf(demonstration: Demonstration, now: Settings, asProjector: boolean): string {
  const query = [settingsText(now, demonstration.start), asProjector ? 'projector' : ''].filter(Boolean).join('&');
  return `${ROOM}/${demonstration.id}${query ? `?${query}` : ''}`;
}

/** Opens what an address names; an address that the room wrote itself changes nothing. */
export function openAddress(hash: string): void {
  const address = roomAddress(hash);
  if (address.place !== 'room') return;
  if (hash === addressOf(shown.peek(), settings.peek(), projector.peek())) return;
  show(address.demonstration, address.settings);
  projector.value = address.projector;
}

/** Keeps the address up to date, a little behind the hand. @returns stops */
export function keepAddress(): () => void {
  let timer = 0;
  const stop = effect(() => {
    const hash = addressOf(shown.value, settings.value, projector.value);
    clearTimeout(timer);
    timer = window.setTimeout(() => {
      if (roomAddress(location.hash).place === 'room' && location.hash !== hash) history.replaceState(null, '', hash);
    }, 250);
  });
  return () => {
    clearTimeout(timer);
    stop();
  };
}
