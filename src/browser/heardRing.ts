import type { Live } from '../core/run/live';

/** One heard pulse on the sound ring. */
export type RingMark = { readonly headingDeg: number; readonly loudnessDb: number; readonly flatOut: boolean; readonly walkedM: number };

/** Walking further than this makes what was heard before worthless as a picture of here. */
const KEPT_WALK_M = 10;
/** One segment of the ring. */
export const SEGMENT_DEG = 5;

/**
 * The ring after a tick: only headings heard since the last change of gain or attenuator and within the last ten metres,
 * one mark a segment, the newest. Drawn in full the ring would give the bearing away.
 */
export function heardSince(ring: readonly RingMark[], before: Live | null, now: Live): readonly RingMark[] {
  const { controls, walkedM, hold } = now.state;
  const changed =
    before !== null && (before.state.controls.gainDb !== controls.gainDb || before.state.controls.attenuatorDb !== controls.attenuatorDb);
  const kept = changed ? [] : ring.filter((mark) => walkedM - mark.walkedM <= KEPT_WALK_M);
  const fresh = now.pulses.slice(before?.pulses.length ?? 0).filter(({ heard }) => heard.audible);
  if (fresh.length === 0) return kept.length === ring.length ? ring : kept;
  // The pulse began in this tick, before the antenna moved on.
  const headingDeg = before?.state.hold.headingDeg ?? hold.headingDeg;
  const segment = segmentOf(headingDeg);
  const marks = fresh.map(({ heard }) => ({ headingDeg, loudnessDb: heard.loudnessDb, flatOut: heard.flatOut, walkedM }));
  return [...kept.filter((mark) => segmentOf(mark.headingDeg) !== segment), ...marks.slice(-1)];
}

export const segmentOf = (headingDeg: number): number => Math.floor((headingDeg + SEGMENT_DEG / 2) / SEGMENT_DEG) % (360 / SEGMENT_DEG);
