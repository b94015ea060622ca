import { distanceFromLeastGainM } from '../technique/gainDistance';
import { distanceM, type MapPoint, stepAlong } from '../units/frames';
import { walkable } from '../world/walking';
import type { Script } from './hands';
import type { Hunt } from './hunt';
import { look } from './lookRound';
import { flipped, walkThere } from './onFoot';

/** Gain this low says the tag is close by. */
export const CLOSE_M = 90;
/** Looks before one steps back and takes a fresh reading from farther off. */
const MOST_LOOKS = 45;

/** The last fifty metres: short steps, a look after each, and "here" when the sound says so or turns behind. */
export function* closeIn(hunt: Hunt): Script<void> {
  let before: { readonly at: MapPoint; readonly bearingDeg: number } | null = null;
  for (let looks = 0; looks < MOST_LOOKS; looks++) {
    const found = yield* look(hunt, null);
    const { at } = hunt.view.seen;
    if (!found) return;
    const guessM = distanceFromLeastGainM(found.leastGainDb);
    if (guessM > 2.5 * CLOSE_M) return;
    if (before && flipped(before.bearingDeg, found.bearingDeg) && distanceM(before.at, at) < 45) {
      const backM = Math.max(2, distanceM(before.at, at) / 2);
      yield* stepAndSay(hunt, found.bearingDeg, backM);
    } else {
      const stepM = Math.min(28, Math.max(3, 0.6 * guessM));
      if (guessM < 1.6 * hunt.view.seen.limits.findWithinM) yield* stepAndSay(hunt, found.bearingDeg, Math.min(stepM, 6));
      else yield* stepTo(hunt, found.bearingDeg, stepM);
    }
    before = { at, bearingDeg: found.bearingDeg };
  }
}

function* stepTo(hunt: Hunt, alongDeg: number, lengthM: number): Script<void> {
  const { at, map } = hunt.view.seen;
  const to = stepAlong(at, alongDeg, lengthM);
  if (walkable(map, to)) yield* walkThere(hunt, to, alongDeg);
  else yield* walkThere(hunt, stepAlong(at, alongDeg + (hunt.random() < 0.5 ? 50 : -50), lengthM), alongDeg);
}

function* stepAndSay(hunt: Hunt, alongDeg: number, lengthM: number): Script<void> {
  yield* stepTo(hunt, alongDeg, lengthM);
  hunt.view = yield [{ type: 'declare' }];
}
