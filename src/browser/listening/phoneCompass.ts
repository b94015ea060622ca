import { signal } from '@preact/signals';
import { set, spinDegPerS } from './roomState';

/** The phone itself as the antenna: on, and where the room's "ahead" lies. */
export const compassOn = signal(false);
/** Why it does not work, in plain words; empty where there is nothing to say. */
export const compassWords = signal('');

/** As browsers give it: some have a compass heading of their own, some ask for leave first. */
type Orientation = DeviceOrientationEvent & { readonly webkitCompassHeading?: number };
type AsksFirst = { readonly requestPermission?: () => Promise<'granted' | 'denied'> };

const NO_LEAVE = 'This browser keeps the compass to itself. Allow motion and orientation for this page, or turn the ring with a thumb.';
const NO_COMPASS = 'No compass answers on this device. Turn the ring with a thumb instead.';
/** A compass that has not answered by then is none, ms. */
const PATIENCE_MS = 1_500;

/** A touch device that can tell how it is turned; only a reading proves that there is a compass. */
export const mayHaveCompass = (): boolean =>
  typeof DeviceOrientationEvent !== 'undefined' && matchMedia('(pointer: coarse)').matches && isSecureContext;

let stopCompass: (() => void) | null = null;

/** Turns the compass on or off; call it from a gesture. The way the phone points at the first reading is ahead. */
export async function toggleCompass(): Promise<void> {
  compassWords.value = '';
  if (stopCompass) stopCompass();
  else if (await mayRead()) followPhone();
  else compassWords.value = NO_LEAVE;
}

async function mayRead(): Promise<boolean> {
  const { requestPermission } = DeviceOrientationEvent as unknown as AsksFirst;
  if (!requestPermission) return true;
  return requestPermission.call(DeviceOrientationEvent).then(
    (answer) => answer === 'granted',
    () => false,
  );
}

function followPhone(): void {
  let aheadDeg: number | null = null;
  const turn = (event: Event) => {
    const { webkitCompassHeading, alpha } = event as Orientation;
    const headingDeg = webkitCompassHeading ?? (alpha === null ? null : 360 - alpha);
    if (headingDeg === null) return;
    aheadDeg ??= headingDeg;
    spinDegPerS.value = 0;
    set({ headingDeg: headingDeg - aheadDeg });
  };
  const kind = 'ondeviceorientationabsolute' in window ? 'deviceorientationabsolute' : 'deviceorientation';
  const patience = setTimeout(() => {
    if (aheadDeg !== null) return;
    stopCompass?.();
    compassWords.value = NO_COMPASS;
  }, PATIENCE_MS);
  addEventListener(kind, turn);
  compassOn.value = true;
  stopCompass = () => {
    clearTimeout(patience);
    removeEventListener(kind, turn);
    compassOn.value = false;
    stopCompass = null;
  };
}

export function leaveCompass(): void {
  compassWords.value = '';
  stopCompass?.();
}
