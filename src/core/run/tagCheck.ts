import { CLEAREST_NOTE_HZ, tuningLossDb } from '../receiver/tuning';
import type { Scenario } from '../scenario/schema';
import type { Pulse } from './pulse';
import { type Beat, type RunState, TICKS_PER_S } from './state';

/**
 * The check of a tag before leaving (common practice, no source): its note on the clearest pitch, found at a faint level; heard with
 * the antenna upright and flat; its rate counted. Leaving is walking away from the start.
 */
const LEAVING_M = 30;
/** A note this near the clearest one costs under a tenth of a decibel. */
const CLEAR_HZ = 150;
/** Loud, every note sounds alike: the clearest is found while it is faint. */
const FAINT_DB = 18;
const UPRIGHT_FROM_DEG = 67.5;
const FLAT_TO_DEG = 22.5;
const LEAST_BEATS = 5;
/** A pause this long begins a new count. */
const COUNT_GAP_S = 4;
/** A hand counts to about this share. */
const RATE_SHARE = 0.08;

/** A beep that was heard before leaving, as far as the check asks. */
export type CheckBeep = { readonly tag: number; readonly rollDeg: number; readonly isClear: boolean };

/** Those among the pulses that began in the tick that `before` stands at the beginning of. */
export const checkBeepsAmong = (before: RunState, begun: readonly Pulse[]): readonly CheckBeep[] =>
  before.walkedM > LEAVING_M
    ? []
    : begun
        .filter(({ heard }) => heard.audible)
        .map(({ heard, truth }) => ({
          tag: truth.tag,
          rollDeg: before.hold.rollDeg,
          isClear: Math.abs(heard.pitchHz - CLEAREST_NOTE_HZ) <= CLEAR_HZ && heard.loudnessDb <= FAINT_DB && !heard.flatOut,
        }));

export type TagCheck = {
  readonly note: boolean;
  readonly upright: boolean;
  readonly flat: boolean;
  /** Beeps a minute as they were counted; `null` as long as too few were. */
  readonly countedPerMinute: number | null;
  readonly rate: boolean;
};

export function tagCheckOf(scenario: Scenario, tag: number, beeps: readonly CheckBeep[], beats: readonly Beat[]): TagCheck {
  const own = beeps.filter((beep) => beep.tag === tag);
  const countedPerMinute = countedRate(beats.filter(({ walkedM }) => walkedM <= LEAVING_M));
  const listed = scenario.tags[tag]!.pulsesPerMinute;
  return {
    note: own.some(({ isClear }) => isClear),
    upright: own.some(({ rollDeg }) => rollDeg >= UPRIGHT_FROM_DEG),
    flat: own.some(({ rollDeg }) => rollDeg <= FLAT_TO_DEG),
    countedPerMinute,
    rate: countedPerMinute !== null && Math.abs(countedPerMinute - listed) <= RATE_SHARE * listed,
  };
}

/** Beeps a minute from the last beats that follow one another. */
function countedRate(beats: readonly Beat[]): number | null {
  const breaks = beats.map(({ atTick }, i) => i > 0 && atTick - beats[i - 1]!.atTick > COUNT_GAP_S * TICKS_PER_S);
  const count = beats.slice(Math.max(0, breaks.lastIndexOf(true)));
  const seconds = ((count.at(-1)?.atTick ?? 0) - (count[0]?.atTick ?? 0)) / TICKS_PER_S;
  return count.length < LEAST_BEATS || seconds <= 0 ? null : Math.round((60 * (count.length - 1)) / seconds);
}

export const isComplete = ({ note, upright, flat, rate }: TagCheck): boolean => note && upright && flat && rate;

/** What being off the note cost after leaving, the median over a tag's pulses, dB; `null` where none came. */
export function offNoteDb(states: readonly RunState[], pulses: readonly Pulse[], tag: number): number | null {
  const losses = pulses
    .filter(({ heard, truth }) => truth.tag === tag && (states[Math.floor(heard.atS * TICKS_PER_S)]?.walkedM ?? 0) > LEAVING_M)
    .map(({ heard }) => tuningLossDb(heard.pitchHz))
    .sort((a, b) => a - b);
  return losses[losses.length >> 1] ?? null;
}
