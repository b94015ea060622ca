import type { Listener } from '../ear/loudness';

/** A hearing check that was made: with which loudspeaker (its name where the browser tells it, else empty), at which volume. */
export type CheckedListener = {
  readonly device: string;
  readonly volumeDb: number;
  readonly thresholdDb: number;
  /** ISO time. */
  readonly checkedAt: string;
};

/** More than this and the check does not hold any more. */
const VOLUME_MOVED_DB = 6;

export type ListenerNow = { readonly listener: Listener; readonly checkedAt: string | null; readonly due: boolean };

/**
 * Who listens, from the newest check with this loudspeaker. Volume that was turned up since brings the threshold down by as much; moved by
 * more than 6 dB, or without a check, a new one is due.
 */
export function listenerNow(checks: readonly CheckedListener[], device: string, volumeDb: number): ListenerNow {
  const own = checks.filter((check) => check.device === device).sort((a, b) => (a.checkedAt < b.checkedAt ? 1 : -1))[0];
  if (!own) return { listener: { thresholdDb: 0 }, checkedAt: null, due: true };
  const thresholdDb = Math.min(40, Math.max(-40, own.thresholdDb + own.volumeDb - volumeDb));
  return { listener: { thresholdDb }, checkedAt: own.checkedAt, due: Math.abs(volumeDb - own.volumeDb) > VOLUME_MOVED_DB };
}
