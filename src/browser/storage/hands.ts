import { effect, signal } from '@preact/signals';
import { type Buttons, COMMANDS, FIRST_BUTTONS, FIRST_KEYS, type Keys } from '../input/commands';

/** How a person's hands work the ground on this device. */
export type Hands = {
  readonly keys: Keys;
  readonly buttons: Buttons;
  /** Degrees a second that a held key or a full stick turns the antenna. */
  readonly turnDegPerS: number;
  /** How much sticks and triggers do of it. */
  readonly sensitivity: number;
  /** What is added to the compass of the device so that its heading is that of the map; `null` until it is calibrated. */
  readonly northOffDeg: number | null;
};

export const TURN_SPEEDS_DEG_PER_S = [20, 45, 70, 110] as const;
export const SENSITIVITIES = [0.5, 1, 1.6] as const;
const KEY = 'faintward-hands';
const FIRST: Hands = { keys: FIRST_KEYS, buttons: FIRST_BUTTONS, turnDegPerS: 45, sensitivity: 1, northOffDeg: null };

export const hands = signal<Hands>(stored());

function stored(): Hands {
  try {
    const read = JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Hands>;
    return {
      keys: kept(FIRST_KEYS, read.keys, (value) => typeof value === 'string' && value.length > 0 && value.length < 20),
      buttons: kept(FIRST_BUTTONS, read.buttons, (value) => value === null || (Number.isInteger(value) && Number(value) < 64)),
      turnDegPerS: TURN_SPEEDS_DEG_PER_S.find((speed) => speed === read.turnDegPerS) ?? FIRST.turnDegPerS,
      sensitivity: SENSITIVITIES.find((factor) => factor === read.sensitivity) ?? FIRST.sensitivity,
      northOffDeg: typeof read.northOffDeg === 'number' && Number.isFinite(read.northOffDeg) ? read.northOffDeg : null,
    };
  } catch {
    return FIRST;
  }
}

/** What was stored for each command that there is, where it is sound. */
function kept<T extends Readonly<Record<string, unknown>>>(first: T, read: unknown, sound: (value: unknown) => boolean): T {
  const found = (typeof read === 'object' && read !== null ? read : {}) as Readonly<Record<string, unknown>>;
  return Object.fromEntries(COMMANDS.map(({ id }) => [id, id in found && sound(found[id]) ? found[id] : first[id]])) as unknown as T;
}

export const changeHands = (part: Partial<Hands>): void => {
  hands.value = { ...hands.peek(), ...part };
};

export const handsAsAtFirst = (): void => changeHands({ keys: FIRST_KEYS, buttons: FIRST_BUTTONS });

effect(() => {
  try {
    localStorage.setItem(KEY, JSON.stringify(hands.value));
  } catch {
    // a window that refuses storage keeps them until it is closed
  }
});
