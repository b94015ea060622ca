import { turnDeg } from '../units/angles';
import type { BearingRow } from './bearings';
import type { ArrowKind, WaveArrow } from './lossBudget';

/** What a bearing pointed at, as far as its waves and its gain can tell. */
export type BearingVerdict =
  | { readonly kind: 'tag' }
  /** The wave straight from the tag is the nearest, but the bearing misses it. */
  | { readonly kind: 'roughly' }
  /** Away from the strongest wave at too much gain: front and back sounded alike. */
  | { readonly kind: 'back-signal' }
  | { readonly kind: 'echo'; readonly wave: Exclude<ArrowKind, 'direct'> }
  /** At this gain a wide arc sounds the same. */
  | { readonly kind: 'wide-arc' }
  | { readonly kind: 'astray' };

const ON_THE_TAG_DEG = 10;
const ON_A_WAVE_DEG = 20;
const BEHIND_DEG = 25;
/** From this excess on the arc in which nothing changes is wider than a bearing's error should be. */
const WIDE_DB = 20;

export function bearingVerdict(row: Pick<BearingRow, 'takenDeg' | 'errorDeg' | 'excessDb'>, waves: readonly WaveArrow[]): BearingVerdict {
  if (Math.abs(row.errorDeg) <= ON_THE_TAG_DEG) return { kind: 'tag' };
  const gapDeg = ({ azimuthDeg }: WaveArrow, deg: number) => Math.abs(turnDeg(deg, azimuthDeg));
  const tooLoud = (row.excessDb ?? 0) > WIDE_DB;
  const strongest = waves[0];
  if (tooLoud && strongest && gapDeg(strongest, row.takenDeg + 180) <= BEHIND_DEG) return { kind: 'back-signal' };
  // Waves come strongest first: of those that lie near, the strongest made the bearing.
  const near = waves.find((wave) => gapDeg(wave, row.takenDeg) <= ON_A_WAVE_DEG);
  if (near) return near.kind === 'direct' ? { kind: 'roughly' } : { kind: 'echo', wave: near.kind };
  return tooLoud ? { kind: 'wide-arc' } : { kind: 'astray' };
}
