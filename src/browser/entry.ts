/**
 * The first file of the page. The Listening room and the drills come alone, so that a phone has them within a second; every other
 * room comes with `main.tsx`. They may be open in turn in one page, each in its own element.
 */
import './trustedScripts';
import { keepOffline } from './offline/keepOffline';

type Mount = (into: HTMLElement, onLeave: () => void) => () => void;
type OwnRoom = { readonly address: RegExp; readonly element: string; readonly fetchMount: () => Promise<Mount> };

const OWN_ROOMS: readonly OwnRoom[] = [
  {
    address: /^#\/listen(\/|\?|$)/,
    element: 'listening',
    fetchMount: async () => (await import('./listening/mountListening')).mountListening,
  },
  { address: /^#\/drills(\/|\?|$)/, element: 'drills', fetchMount: async () => (await import('./drills/mountDrills')).mountDrills },
];

const roomNow = (): OwnRoom | null => OWN_ROOMS.find(({ address }) => address.test(location.hash)) ?? null;

let opened: { readonly room: OwnRoom; readonly leave: () => void } | null = null;

async function follow(): Promise<void> {
  const wanted = roomNow();
  if (opened && opened.room !== wanted) {
    opened.leave();
    opened = null;
  }
  if (!wanted) {
    await import('./main');
    return;
  }
  if (opened) return;
  const mount = await wanted.fetchMount();
  // Meanwhile the address may have moved on, or a second change of it may have opened the room.
  if (roomNow() !== wanted || opened) return;
  const leave = mount(document.getElementById(wanted.element)!, () => {
    location.hash = '/';
  });
  opened = { room: wanted, leave };
}

addEventListener('hashchange', () => void follow());
void follow();
keepOffline();
