import type { BearingLine } from '../fix/bearingLine';
import type { View } from './policy';

/** The decisions that make a walker what it is. A faulty walker is the steady one with one of them replaced. */
export type Decisions = {
  /** Loudness at the best heading that the gain is set for, dB above just heard. */
  readonly wantedDb: number;
  /** Takes gain away as soon as the sound is too loud; otherwise it is set at the next place only. */
  readonly cuts: boolean;
  /** Turns the knob in the middle of a sweep, counted from 0. */
  readonly fidgetsIn: (sweep: number) => boolean;
  /** Stands this many seconds for each second walked on the way between places. */
  readonly standsPerWalkedS: number;
  /** The course it sets, from the direction that its readings support; `leg` counts from 0. */
  readonly courseDeg: (supportedDeg: number, leg: number, random: () => number) => number;
  /** Goes by what it hears at all: closes in where the sound is strong, walks no farther than to the crossing. */
  readonly heeds: boolean;
  /** Reads from open places, and answers a contradiction there; or from the hollows. */
  readonly reads: 'open' | 'low';
};

export const STEADY_DECISIONS: Decisions = {
  wantedDb: 8,
  cuts: true,
  fidgetsIn: () => false,
  standsPerWalkedS: 0,
  courseDeg: (supportedDeg) => supportedDeg,
  heeds: true,
  reads: 'open',
};

export type HuntReading = BearingLine & { readonly leastGainDb: number };

/** The hunt so far. Written by the scripts of one walker only. */
export type Hunt = {
  view: View;
  readonly random: () => number;
  readonly decisions: Decisions;
  readonly readings: HuntReading[];
  /** Gain less attenuation that was just enough at the last reading. */
  leastGainDb: number | null;
  /** Sweeps made and legs walked, for decisions that count them. */
  sweeps: number;
  legs: number;
};

export const beginHunt = (decisions: Decisions, view: View, random: () => number): Hunt => ({
  view,
  random,
  decisions,
  readings: [],
  leastGainDb: null,
  sweeps: 0,
  legs: 0,
});

/** A draw from a normal distribution of deviation 1 (sum of twelve, near enough for an ear). */
export function normalDraw(random: () => number): number {
  let sum = -6;
  for (let i = 0; i < 12; i++) sum += random();
  return sum;
}
