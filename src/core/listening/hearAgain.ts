import { wrapBearingDeg } from '../units/angles';
import type { SettingId } from './settings';

/** What a moment of a run was an instance of, as far as a demonstration can show it. */
export const SITUATIONS = [
  'saturated',
  'too much gain',
  'back signal',
  'wrong axis',
  'bounce',
  'wires near',
  'woodland fade',
  'low place',
  'close',
  'off the note',
  'not heard',
  'crossing',
] as const;
export type Situation = (typeof SITUATIONS)[number];

/** How the antenna was held and the receiver set at the moment, and what the waves did. */
export type HeardThen = {
  readonly gainDb: number;
  readonly attenuatorDb: number;
  /** 0 flat, 90 upright. */
  readonly rollDeg: number;
  readonly distanceM: number;
  /** Antenna's heading against the transmitter's true bearing, degrees, clockwise positive. */
  readonly offDeg: number;
  /** The dial against the clearest note, Hz. */
  readonly offsetHz: number;
  /** Gain less attenuation over least gain, dB; null where no setting heard it. */
  readonly excessDb: number | null;
};

/** A demonstration and the part of the address that sets it as it was. */
export type HearAgain = { readonly id: string; readonly title: string; readonly address: string };

type Sets = Partial<Record<SettingId, number>>;
/**
 * A demonstration for a situation. Where `over` is so, the gain is set as far over least gain as it was then, since the place is another one; elsewhere
 * it is set to the same number on the knob.
 */
type Shown = { readonly id: string; readonly title: string; readonly over: boolean; readonly sets: (then: HeardThen) => Sets };

const between = (from: number, to: number, step: number, value: number): number =>
  Math.min(to, Math.max(from, from + Math.round((value - from) / step) * step));
/** Which of the values is nearest by ratio, as distances are compared. */
const nearestOf = (values: readonly number[], value: number): number =>
  values.reduce((best, one, i) => (Math.abs(Math.log(one / value)) < Math.abs(Math.log(values[best]! / value)) ? i : best), 0);
const facing = ({ offDeg }: HeardThen): Sets => ({ headingDeg: Math.round(wrapBearingDeg(offDeg)) % 360 });

const backSignal = { id: 'back-signal', title: 'Back signal', over: true, sets: facing } as const;
const SHOWN: Readonly<Record<Situation, Shown>> = {
  saturated: backSignal,
  'back signal': backSignal,
  'too much gain': {
    id: 'quiet-gain',
    title: 'Quiet gain',
    over: true,
    sets: (then) => ({ ...facing(then), choice: nearestOf([200, 400, 800], Math.max(1, then.distanceM)) }),
  },
  'wrong axis': {
    id: 'axis',
    title: 'Axis',
    over: true,
    // The rods stood across the whip: a whip upright where the antenna was held flat, lying where it was upright.
    sets: ({ rollDeg }) => ({ rollDeg: between(0, 90, 45, rollDeg), choice: rollDeg < 45 ? 0 : 2 }),
  },
  bounce: { id: 'bounce', title: 'Bounce', over: true, sets: () => ({}) },
  'wires near': { id: 'wires', title: 'Wires', over: true, sets: () => ({ headingDeg: 180 }) },
  'woodland fade': { id: 'a-step-aside', title: 'A step aside', over: false, sets: facing },
  'low place': { id: 'clear-view', title: 'Clear view', over: true, sets: (then) => ({ ...facing(then), walkM: 0 }) },
  close: {
    id: 'close-in',
    title: 'Close in',
    over: false,
    sets: (then) => ({
      ...facing(then),
      walkM: between(2, 50, 2, then.distanceM),
      attenuatorDb: between(0, 30, 10, then.attenuatorDb),
    }),
  },
  'off the note': {
    id: 'on-the-note',
    title: 'On the note',
    over: true,
    sets: ({ offsetHz }) => ({ offsetHz: between(-3_000, 3_000, 50, offsetHz) }),
  },
  'not heard': { id: 'how-far', title: 'How far', over: true, sets: ({ distanceM }) => ({ walkM: between(200, 3_000, 100, distanceM) }) },
  crossing: { id: 'crossing-bearings', title: 'Crossing bearings', over: true, sets: () => ({}) },
};

/** The demonstration that shows what a moment was, with an address that sets it close to how it was then. */
export function demonstrationFor(situation: Situation, then: HeardThen): HearAgain {
  const { id, title, over, sets } = SHOWN[situation];
  const gain = over && then.excessDb !== null ? `overDb=${Math.round(then.excessDb)}` : `gainDb=${between(0, 90, 1, then.gainDb)}`;
  const rest = Object.entries(sets(then)).map(([key, value]) => `${key}=${value}`);
  return { id, title, address: `#/listen/${id}?${[gain, ...rest].join('&')}` };
}
