import { type RunState, TICK_S, TICKS_PER_S } from '../run/state';
import { turnDeg } from '../units/angles';

/** The antenna turned over at least 45 degrees without a long rest. Headings are unwrapped, so an arc may pass 360. */
export type Sweep = {
  readonly fromTick: number;
  readonly toTick: number;
  /** Width of the arc it covered, degrees, possibly above 360. */
  readonly arcDeg: number;
  /** Ticks within the sweep at which a control changed by enough to cut it. */
  readonly cutTicks: readonly number[];
};

/** A part of a sweep within which no control was changed: what was heard in it can be compared. */
export type Piece = { readonly fromTick: number; readonly toTick: number; readonly arcDeg: number };

/** Turning is more than this over half a second, so that a jerky hand and a smooth one count alike. */
const TURNING_DEG_PER_S = 5;
const WINDOW_TICKS = TICKS_PER_S / 2;
const LEAST_ARC_DEG = 45;
const JOINED_PULSES = 2.5;
const CUT_GAIN_DB = 2;
const CUT_NOTE_HZ = 100;

/** Heading without jumps at north, one value a tick. */
export function unwrappedHeadings(states: readonly RunState[]): Float64Array {
  const headings = new Float64Array(states.length);
  for (let i = 0; i < states.length; i++) {
    const heading = states[i]!.hold.headingDeg;
    headings[i] = i === 0 ? heading : headings[i - 1]! + turnDeg(states[i - 1]!.hold.headingDeg, heading);
  }
  return headings;
}

/** For each tick: does the antenna turn, seen over half a second around it? */
export function turningTicks(headings: Float64Array): Uint8Array {
  const pathDeg = new Float64Array(headings.length);
  for (let i = 1; i < headings.length; i++) pathDeg[i] = pathDeg[i - 1]! + Math.abs(headings[i]! - headings[i - 1]!);
  return Uint8Array.from(headings, (_, i) => {
    const from = Math.max(0, i - WINDOW_TICKS / 2);
    const to = Math.min(headings.length - 1, i + WINDOW_TICKS / 2);
    return to > from && pathDeg[to]! - pathDeg[from]! > TURNING_DEG_PER_S * (to - from) * TICK_S ? 1 : 0;
  });
}

/** All sweeps of a run. `pulseS` is the interval between the pulses listened to. */
export function sweepsOf(states: readonly RunState[], pulseS: number): readonly Sweep[] {
  const headings = unwrappedHeadings(states);
  const turning = turningTicks(headings);
  const sweeps: Sweep[] = [];
  for (const [fromTick, toTick] of joined(stretches(turning), states, JOINED_PULSES * pulseS * TICKS_PER_S)) {
    const arcDeg = rangeDeg(headings, fromTick, toTick);
    if (arcDeg >= LEAST_ARC_DEG) sweeps.push({ fromTick, toTick, arcDeg, cutTicks: cutsIn(states, turning, fromTick, toTick) });
  }
  return sweeps;
}

/** Width of the headings between two ticks, degrees. */
export function rangeDeg(headings: Float64Array, fromTick: number, toTick: number): number {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = fromTick; i <= toTick; i++) {
    least = Math.min(least, headings[i]!);
    most = Math.max(most, headings[i]!);
  }
  return most - least;
}

/** The widest part of a sweep between changes; all of it where nothing was changed. */
export function longestUncut(headings: Float64Array, { fromTick, toTick, arcDeg, cutTicks }: Sweep): Piece {
  if (cutTicks.length === 0) return { fromTick, toTick, arcDeg };
  const ends = [fromTick, ...cutTicks, toTick];
  let longest: Piece = { fromTick, toTick: fromTick, arcDeg: 0 };
  for (let i = 1; i < ends.length; i++) {
    const [from, to] = [ends[i - 1]!, ends[i]!];
    const pieceDeg = rangeDeg(headings, from, to);
    if (pieceDeg > longest.arcDeg) longest = { fromTick: from, toTick: to, arcDeg: pieceDeg };
  }
  return longest;
}

function stretches(turning: Uint8Array): readonly (readonly [number, number])[] {
  const found: [number, number][] = [];
  for (let i = 0; i < turning.length; i++) {
    if (!turning[i]) continue;
    const last = found.at(-1);
    if (last && last[1] === i - 1) last[1] = i;
    else found.push([i, i]);
  }
  return found;
}

/** Short rests are part of a sweep (point, wait for the beep, go on), unless a control was set during the rest. */
function joined(parts: readonly (readonly [number, number])[], states: readonly RunState[], restTicks: number): [number, number][] {
  const whole: [number, number][] = [];
  for (const [from, to] of parts) {
    const last = whole.at(-1);
    const short = last !== undefined && from - last[1] < restTicks;
    if (last && short && !(from - last[1] >= WINDOW_TICKS && changedBetween(states, last[1], from))) last[1] = to;
    else whole.push([from, to]);
  }
  return whole;
}

/** Have the controls changed by enough to count between two ticks? */
function changedBetween(states: readonly RunState[], fromTick: number, toTick: number): boolean {
  return isCut(states[fromTick]!, states[toTick]!);
}

const isCut = ({ controls: a }: RunState, { controls: b }: RunState): boolean =>
  Math.abs(b.gainDb - a.gainDb) >= CUT_GAIN_DB - 1e-9 ||
  a.attenuatorDb !== b.attenuatorDb ||
  Math.abs(b.tunedMHz - a.tunedMHz) * 1e6 >= CUT_NOTE_HZ - 0.01;

/** Small steps add up: a knob drawn slowly through the sweep cuts it each time it has moved far enough. */
function cutsIn(states: readonly RunState[], turning: Uint8Array, fromTick: number, toTick: number): readonly number[] {
  const cuts: number[] = [];
  let reference = states[fromTick]!;
  for (let i = fromTick; i <= toTick; i++) {
    if (!isCut(reference, states[i]!)) continue;
    reference = states[i]!;
    if (turning[i]) cuts.push(i);
  }
  return cuts;
}
