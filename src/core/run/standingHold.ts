import type { Exercise } from './exercise';
import { type BestHold, bestHold, type TagHere } from './sense';
import type { Hold } from './state';

/** The best hold for one strength of the tag; another strength moves its power by as much and nothing else. */
type KeptHold = { readonly best: BestHold; readonly eirpDbm: number };

const kept = new WeakMap<TagHere['arrivals'], Map<string, KeptHold>>();

/** The best hold here; one who stands hears many pulses of the same waves, and it is looked for once. */
export function standingBestHold(exercise: Exercise, here: TagHere, antenna: Hold['antenna'], raised: boolean): BestHold {
  const known = kept.get(here.arrivals) ?? new Map<string, KeptHold>();
  kept.set(here.arrivals, known);
  const key = `${antenna}/${raised}`;
  const { best, eirpDbm } = known.get(key) ?? { best: bestHold(exercise, here, antenna, raised), eirpDbm: here.eirpDbm };
  known.set(key, { best, eirpDbm });
  return { ...best, powerDbm: best.powerDbm + here.eirpDbm - eirpDbm };
}
