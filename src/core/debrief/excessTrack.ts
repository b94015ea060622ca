import type { MapPoint } from '../units/frames';
import { POSES_PER_S, type Poses } from './poses';
import { rowAt, type Timeline } from './timeline';

/**
 * How much gain was in use on a stretch of the way. `silent`: less than the least gain; `quiet`: up to 10 dB over it, full marks of
 * quiet gain; `loud`: up to 30 dB; `flat-out`: more, or saturated; `unknown`: no pulse due, or none that any setting would hear.
 */
export type ExcessClass = 'silent' | 'quiet' | 'loud' | 'flat-out' | 'unknown';

const QUIET_UP_TO_DB = 10;
const LOUD_UP_TO_DB = 30;
/** A pulse speaks for the way after it this long at most. */
const SPEAKS_FOR_S = 4;
const STEP_M = 2;

export function excessClass(excessDb: number | null, flatOut: boolean): ExcessClass {
  if (excessDb === null) return 'unknown';
  if (flatOut || excessDb > LOUD_UP_TO_DB) return 'flat-out';
  if (excessDb < 0) return 'silent';
  return excessDb <= QUIET_UP_TO_DB ? 'quiet' : 'loud';
}

/** A stretch of way of one class; neighbours share their end points. */
export type TrackPiece = { readonly kind: ExcessClass; readonly points: readonly MapPoint[] };

/** The way walked, a point every two metres, cut where the class changes. */
export function excessTrack(timeline: Timeline, poses: Poses): readonly TrackPiece[] {
  const pieces: { kind: ExcessClass; points: MapPoint[] }[] = [];
  let last: MapPoint | null = null;
  for (let i = 0; i < poses.eM.length; i++) {
    const at = { eM: poses.eM[i]!, nM: poses.nM[i]! };
    const isEnd = i === poses.eM.length - 1;
    if (last && !isEnd && Math.hypot(at.eM - last.eM, at.nM - last.nM) < STEP_M) continue;
    const kind = classAt(timeline, i / POSES_PER_S);
    const piece = pieces.at(-1);
    if (piece && piece.kind === kind) piece.points.push(at);
    else pieces.push({ kind, points: last ? [last, at] : [at] });
    last = at;
  }
  return pieces;
}

function classAt(timeline: Timeline, atS: number): ExcessClass {
  const row = rowAt(timeline, atS);
  if (row < 0 || atS - timeline.timeS[row]! > SPEAKS_FOR_S) return 'unknown';
  return excessClass(timeline.excessDb[row]!, timeline.flatOut[row]!);
}

/** Share of the pulses that were of each class, of those whose class is known; all 0 where none is. */
export function excessShares(timeline: Timeline): Readonly<Record<Exclude<ExcessClass, 'unknown'>, number>> {
  const counts = { silent: 0, quiet: 0, loud: 0, 'flat-out': 0 };
  let known = 0;
  timeline.excessDb.forEach((excessDb, i) => {
    const kind = excessClass(excessDb, timeline.flatOut[i]!);
    if (kind === 'unknown') return;
    counts[kind]++;
    known++;
  });
  const share = (count: number) => (known === 0 ? 0 : count / known);
  return { silent: share(counts.silent), quiet: share(counts.quiet), loud: share(counts.loud), 'flat-out': share(counts['flat-out']) };
}
