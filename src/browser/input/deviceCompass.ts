import { type ReadonlySignal, signal } from '@preact/signals';
import { toDeg, toRad, wrapBearingDeg } from '../../core/units/angles';
import { changeHands, hands } from '../storage/hands';

/** What is known of the compass of the device. Only a reading proves that there is one. */
export type CompassState = 'off' | 'asking' | 'on' | 'denied' | 'absent';

/** The phone itself as the antenna. */
export type DeviceCompass = {
  readonly state: ReadonlySignal<CompassState>;
  /** On or off; call it from a gesture, as browsers ask for leave only then. */
  readonly toggle: () => Promise<void>;
  /** The way the device points now is the map's north, from now on and next time. */
  readonly callNorth: () => void;
  readonly leave: () => void;
};

/** Why it does not turn the antenna, in plain words. */
export const COMPASS_WORDS: Readonly<Partial<Record<CompassState, string>>> = {
  denied: 'This browser keeps the compass to itself. Allow motion and orientation for this page, or drag the dial.',
  absent: 'No compass answers on this device. Drag the dial instead.',
};

/** As browsers give it: some have a compass heading of their own, some ask for leave first. */
type Orientation = DeviceOrientationEvent & { readonly webkitCompassHeading?: number };
type AsksFirst = { readonly requestPermission?: () => Promise<'granted' | 'denied'> };
/** A compass that has not answered by then is none, ms. */
const PATIENCE_MS = 1_500;
/** Turns smaller than this are the trembling of a hand: they would only fill the run's log. */
const STILL_DEG = 0.6;

/** A touch device that may tell how it is turned. */
export const mayHaveCompass = (): boolean =>
  typeof DeviceOrientationEvent !== 'undefined' && matchMedia('(pointer: coarse)').matches && isSecureContext;

/** Turns the antenna with the device: by the north that was called, else from where both are when it is switched on. */
export function deviceCompass(headingDeg: () => number, turnTo: (deg: number) => void): DeviceCompass {
  const state = signal<CompassState>('off');
  let stop: (() => void) | null = null;
  let deviceDeg: number | null = null;
  let offDeg: number | null = null;

  const turn = (event: Event) => {
    const told = deviceHeadingDeg(event as Orientation);
    if (told === null) return;
    const first = deviceDeg === null;
    if (!first && Math.abs(turned(deviceDeg!, told)) < STILL_DEG) return;
    deviceDeg = told;
    const real = (event as Orientation).absolute || (event as Orientation).webkitCompassHeading !== undefined;
    offDeg ??= (real ? hands.peek().northOffDeg : null) ?? headingDeg() - told;
    state.value = 'on';
    turnTo(wrapBearingDeg(told + offDeg));
  };
  const follow = () => {
    [deviceDeg, offDeg] = [null, null];
    const kind = 'ondeviceorientationabsolute' in window ? 'deviceorientationabsolute' : 'deviceorientation';
    const patience = setTimeout(() => {
      if (deviceDeg !== null) return;
      stop?.();
      state.value = 'absent';
    }, PATIENCE_MS);
    addEventListener(kind, turn);
    stop = () => {
      clearTimeout(patience);
      removeEventListener(kind, turn);
      stop = null;
      state.value = 'off';
    };
  };
  return {
    state,
    async toggle() {
      if (stop) {
        stop();
        return;
      }
      state.value = 'asking';
      if (await mayRead()) follow();
      else state.value = 'denied';
    },
    callNorth() {
      if (deviceDeg === null) return;
      offDeg = -deviceDeg;
      changeHands({ northOffDeg: offDeg });
      turnTo(0);
    },
    leave: () => stop?.(),
  };
}

async function mayRead(): Promise<boolean> {
  const { requestPermission } = DeviceOrientationEvent as unknown as AsksFirst;
  if (!requestPermission) return true;
  return requestPermission.call(DeviceOrientationEvent).then(
    (answer) => answer === 'granted',
    () => false,
  );
}

const turned = (fromDeg: number, toDegree: number): number => ((toDegree - fromDeg + 540) % 360) - 180;

/**
 * Where the device points, clockwise from its north: along its upper edge when it lies flat, along its back when it stands upright, and
 * smoothly between, so that it may be held as an antenna or as a map. Angles as the Device Orientation specification turns them: Z-X'-Y''.
 */
function deviceHeadingDeg({ webkitCompassHeading, alpha, beta, gamma }: Orientation): number | null {
  if (webkitCompassHeading !== undefined) return webkitCompassHeading;
  if (alpha === null) return null;
  const [a, b, g] = [toRad(alpha), toRad(beta ?? 0), toRad(gamma ?? 0)];
  const upright = Math.max(0, Math.sin(b));
  const backEast = -(Math.cos(a) * Math.sin(g) + Math.sin(a) * Math.sin(b) * Math.cos(g));
  const backNorth = -(Math.sin(a) * Math.sin(g) - Math.cos(a) * Math.sin(b) * Math.cos(g));
  const east = -Math.cos(b) * Math.sin(a) + upright * backEast;
  const north = Math.cos(a) * Math.cos(b) + upright * backNorth;
  return wrapBearingDeg(toDeg(Math.atan2(east, north)));
}
