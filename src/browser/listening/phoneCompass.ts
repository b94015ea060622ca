import { signal } from '@preact/signals';
import { set, spinDegPerS } from './roomState';

/** The phone itself as the antenna: on, and where the room's "ahead" lies. */
export const compassOn = signal(false);

/** As browsers give it: some have a compass heading of their own, some ask for leave first. */
type Orientation = DeviceOrientationEvent & { readonly webkitCompassHeading?: number };
type AsksFirst = { readonly requestPermission?: () => Promise<'granted' | 'denied'> };

/** A touch device that can tell how it is turned; only a reading proves that there is a compass. */
export const mayHaveCompass = (): boolean =>
  typeof DeviceOrientationEvent !== 'undefined' && matchMedia('(pointer: coarse)').matches && isSecureContext;

let stopCompass: (() => void) | null = null;

/** Turns the compass on or off. The way the phone points at the first reading is ahead. */
export async function toggleCompass(): Promise<void> {
  if (stopCompass) {
    stopCompass();
    return;
  }
  const asks = DeviceOrientationEvent as unknown as AsksFirst;
  if (asks.requestPermission && (await asks.requestPermission()) !== 'granted') return;
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
  addEventListener(kind, turn);
  compassOn.value = true;
  stopCompass = () => {
    removeEventListener(kind, turn);
    compassOn.value = false;
    stopCompass = null;
  };
}

export const leaveCompass = (): void => stopCompass?.();
