import { contradicts } from '../fix/support';
import { TICKS_PER_S } from '../run/state';
import type { Evidence } from './habit';
import type { TagReading } from './legs';
import { listenedPulses } from './tunedTag';

/** The sound lied, or fell silent: a moment after which a clearer view is the answer. */
export type Setback = { readonly tick: number; readonly kind: 'contradiction' | 'lost' };

/** A signal that no setting brings back for this long is lost; shorter is a fade that a few steps end. */
const LOST_S = 15;

/** All setbacks in time order. */
export const setbacksOf = (evidence: Evidence, readings: readonly TagReading[]): readonly Setback[] =>
  [...contradictions(readings), ...losses(evidence)].sort((a, b) => a.tick - b.tick);

/** A reading that contradicts the one before it of the same tag. */
function contradictions(readings: readonly TagReading[]): readonly Setback[] {
  return readings.flatMap((reading, i) => {
    const before = readings
      .slice(0, i)
      .filter(({ tag }) => tag === reading.tag)
      .at(-1);
    return before && contradicts(reading, [before]) ? [{ tick: reading.tick, kind: 'contradiction' as const }] : [];
  });
}

/**
 * The tag listened to had been heard, and then for a quarter of a minute no setting of the receiver would have made it heard.
 * Silence from too little gain is no loss: the gain can be raised.
 */
function losses(evidence: Evidence): readonly Setback[] {
  const found: Setback[] = [];
  let heardTag: number | null = null;
  let goneSinceS: number | null = null;
  for (const { pulse } of listenedPulses(evidence)) {
    const { atS, audible } = pulse.heard;
    if (audible) heardTag = pulse.truth.tag;
    if (audible || pulse.truth.leastGainDb !== null || heardTag !== pulse.truth.tag) {
      goneSinceS = null;
      continue;
    }
    goneSinceS ??= atS;
    if (atS - goneSinceS < LOST_S) continue;
    found.push({ tick: Math.floor(atS * TICKS_PER_S), kind: 'lost' });
    heardTag = null; // one loss until it is heard again
  }
  return found;
}
