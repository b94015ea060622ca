import type { BearingLine } from '../fix/bearingLine';
import type { View } from './policy';

/** What a walker carries in its head, and the decisions that make it what it is. A faulty walker replaces one of them. */
export type Decisions = {
  /** Loudness at the best heading that it sets the gain for, dB above just heard. */
  readonly wantedDb: number;
  /** Does it take gain away when the sound is too loud? */
  readonly cuts: boolean;
  /** Turns the knob this many times in each sweep. */
  readonly fidgets: number;
  /** Chooses where to read next among places it could walk to. */
  readonly placeScore: (openness: number) => number;
  /** Walks by what it hears; otherwise by whim. */
  readonly heeds: boolean;
};

export const STEADY_DECISIONS: Decisions = { wantedDb: 8, cuts: true, fidgets: 0, placeScore: (openness) => openness, heeds: true };

export type HuntReading = BearingLine & { readonly leastGainDb: number };

/** The hunt so far. Written by the scripts of one walker only. */
export type Hunt = {
  view: View;
  readonly random: () => number;
  readonly decisions: Decisions;
  readonly readings: HuntReading[];
  /** Gain less attenuation that was just enough at the last reading. */
  leastGainDb: number | null;
};

/** A draw from a normal distribution of deviation 1 (sum of twelve, near enough for an ear). */
export function normalDraw(random: () => number): number {
  let sum = -6;
  for (let i = 0; i < 12; i++) sum += random();
  return sum;
}
