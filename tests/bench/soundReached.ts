import { makeVoice } from '../../src/core/voice/pulse';
import type { Tapped } from './tappedPage';

/** Samples of one window: a millisecond, and one whole period of a note of 1 kHz. */
export const WINDOW = 48;
const RATE = 48_000;

/** Level in each window of a millisecond since the first sample, dB; NaN where nothing can be said. */
export type Track = Float64Array;

/** Level of the receiver's noise: the voice draws it from the sample's number, so each sample's share is known and no chance is left. */
export function noiseTrack({ firstFrame, samples }: Tapped): Track {
  const plain = new Float32Array(samples.length);
  makeVoice(RATE).render(plain, firstFrame, [], { noiseDb: -20, buzzDb: -999, mainsHz: 50 });
  return windows(samples.length, (from) => {
    let [both, power] = [0, 0];
    for (let i = from; i < from + WINDOW; i++) {
      both += samples[i]! * plain[i]!;
      power += plain[i]! ** 2;
    }
    return 20 * Math.log10(Math.max(1e-9, both / power));
  });
}

/** Level of a note of 1 kHz. */
export function noteTrack({ samples }: Tapped): Track {
  return windows(samples.length, (from) => {
    let [re, im] = [0, 0];
    for (let i = from; i < from + WINDOW; i++) {
      re += samples[i]! * Math.cos((2 * Math.PI * i) / WINDOW);
      im += samples[i]! * Math.sin((2 * Math.PI * i) / WINDOW);
    }
    return 20 * Math.log10((2 / WINDOW) * Math.hypot(re, im) + 1e-9);
  });
}

const windows = (samples: number, levelDb: (from: number) => number): Track =>
  Float64Array.from({ length: Math.floor(samples / WINDOW) }, (_, k) => levelDb(k * WINDOW));

/** The window that the loudspeaker plays at a moment of the page's clock, as the browser says. */
export function windowAt({ clocks, firstFrame }: Tapped, atMs: number): number {
  const near = clocks.filter((pair) => Math.abs(pair.atMs - atMs) < 2_000).map((pair) => pair.playedS - pair.atMs / 1_000);
  return ((atMs / 1_000 + middle(near)) * RATE - firstFrame) / WINDOW;
}

/** How long samples wait in the browser and its output device after they are rendered, ms: part of every latency here. */
export const outputMs = ({ clocks }: Tapped): number => 1_000 * middle(clocks.map(({ renderedS, playedS }) => renderedS - playedS));

/** Sound that was not rendered in time, ms a minute: by so much the loudspeaker's clock fell behind the page's. */
export function lostMs({ clocks }: Tapped): number {
  const behind = clocks.map(({ atMs, playedS }) => atMs - 1_000 * playedS);
  const lost = middle(behind.slice(-50)) - middle(behind.slice(25, 75));
  return Math.max(0, (60_000 * lost) / (clocks.at(-1)!.atMs - clocks[25]!.atMs));
}

const middle = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
const middleOf = (track: Track, from: number, to: number): number => middle([...track.subarray(Math.max(0, from), to)]);

/** Milliseconds from each hand's movement until the level has gone half of its way; movements that changed nothing are left out. */
export function stepLatenciesMs(tapped: Tapped, track: Track, hands: readonly number[]): readonly number[] {
  return hands.flatMap((atMs) => {
    const at = windowAt(tapped, atMs);
    const [from, last] = [Math.floor(at), Math.floor(at) + 200];
    if (from < 40 || last + 50 > track.length) return [];
    const [before, after] = [middleOf(track, from - 40, from), middleOf(track, last, last + 40)];
    if (Math.abs(after - before) < 2) return [];
    let reached = from;
    while (reached < last && Math.abs(track[reached]! - before) < Math.abs(after - before) / 2) reached++;
    return [reached + 1 - at];
  });
}

/** A stretch of windows in which a pulse sounds at its full height, edges left out. */
type Flat = { readonly from: number; readonly to: number };

/** The flat tops of all pulses. `overDb` tells sound from rest, `edge` is what is left out at either end. */
function flats(track: Track, overDb: number, edge = 6): readonly Flat[] {
  const found: Flat[] = [];
  let start = -1;
  for (let k = 0; k <= track.length; k++) {
    const sounds = k < track.length && track[k]! > overDb;
    if (sounds && start < 0) start = k;
    if (!sounds && start >= 0) {
      if (k - start > 3 * edge) found.push({ from: start + edge, to: k - edge });
      start = -1;
    }
  }
  return found;
}

/** What became of one movement of the hand. */
export type PulseLatency = {
  /** The change was seen within one pulse: exact. */
  readonly seenMs: number | null;
  /** The last moment at which a pulse still sounded as before, 0 where none did: a lower bound for any movement. */
  readonly staleMs: number;
};

/** When a turn reached the pulses: a change of `byDb` against what sounded at the movement, in the pulses of the next 0.4 s. */
export function pulseLatenciesMs(tapped: Tapped, track: Track, hands: readonly number[], byDb: number): readonly PulseLatency[] {
  const tops = flats(track, -70);
  return hands.flatMap((atMs) => {
    const at = windowAt(tapped, atMs);
    const earlier = tops.filter(({ to }) => to <= at).at(-1);
    const later = tops.filter(({ from, to }) => to > at && from < at + 400);
    if (!earlier || later.length === 0) return [];
    const before = middleOf(track, earlier.from, earlier.to);
    let [stale, seen] = [at, null as number | null];
    for (const { from, to } of later) {
      const first = Math.max(from, Math.ceil(at));
      for (let k = first; k < to; k++) {
        if (Math.abs(track[k]! - before) < byDb) stale = k + 1;
        else if (k > first && stale === k && seen === null) seen = k;
      }
    }
    return [{ seenMs: seen === null ? null : seen - at, staleMs: stale - at }];
  });
}

/** The value that 95 of 100 don't exceed. */
export const p95 = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.ceil(0.95 * values.length) - 1)] ?? Number.NaN;
