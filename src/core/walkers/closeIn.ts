import { distanceFromLeastGainM } from '../technique/gainDistance';
import { turnDeg } from '../units/angles';
import { bearingDeg, distanceM, type MapPoint, stepAlong } from '../units/frames';
import { walkable } from '../world/walking';
import type { Script } from './hands';
import type { Hunt } from './hunt';
import { type Look, look, lookToward, setNet } from './lookRound';
import { flipped, walkThere } from './onFoot';

/** Gain this low says the tag is close by. */
export const CLOSE_M = 90;
/** Looks before one steps back and takes a fresh reading from farther off. */
const MOST_LOOKS = 40;
/** Needing this much more gain than at the last stop, one has gone past it or astray: look all round again. */
const FARTHER_DB = 3;
const MOST_STRETCH = 4;
const MOST_STEP_M = 100;

/** The last fifty metres: short steps, a look after each, and "here" when the sound says so or turns behind. */
export function* closeIn(hunt: Hunt, first: Look): Script<void> {
  let before: Stop | null = null;
  let found: Look | null = first;
  let stretch = 1;
  for (let looks = 0; looks < MOST_LOOKS && found; looks++) {
    const here: Stop = { at: hunt.view.seen.at, found };
    if (distanceFromLeastGainM(found.leastGainDb) > 2.5 * CLOSE_M) return;
    stretch = before && growsLittle(before, here) ? Math.min(MOST_STRETCH, stretch * 1.5) : 1;
    yield* closer(hunt, before, here, stretch);
    before = here;
    found = yield* lookAgain(hunt, found);
  }
}

type Stop = { readonly at: MapPoint; readonly found: Look };

/** The same side, no louder: the tag is in view and farther than the gain has it. */
const growsLittle = (before: Stop, { found }: Stop): boolean =>
  before.found.leastGainDb - found.leastGainDb < FARTHER_DB && Math.abs(turnDeg(before.found.bearingDeg, found.bearingDeg)) < 25;

/** One step, and "here" where the tag turned behind within a few steps or the gain is that of the last metres. */
function* closer(hunt: Hunt, before: Stop | null, { at, found }: Stop, stretch: number): Script<void> {
  const { findWithinM } = hunt.view.seen.limits;
  const guessM = distanceFromLeastGainM(found.leastGainDb);
  const apartM = before ? distanceM(before.at, at) : 0;
  const behind = before !== null && flipped(before.found.bearingDeg, found.bearingDeg) && apartM > 2 && apartM < MOST_STEP_M + 20;
  if (behind) yield* stepAndSay(hunt, found.bearingDeg, Math.max(2, apartM / 2));
  else if (guessM < 1.6 * findWithinM) yield* stepAndSay(hunt, found.bearingDeg, stretch * Math.min(6, Math.max(3, 0.6 * guessM)));
  else yield* stepTo(hunt, found.bearingDeg, Math.min(MOST_STEP_M, stretch * Math.min(35, Math.max(4, 0.65 * guessM))));
}

/** A narrow look where the tag was last heard; all round where the sound says that one has passed it. */
function* lookAgain(hunt: Hunt, last: Look): Script<Look | null> {
  yield* setNet(hunt, last.leastGainDb + hunt.decisions.wantedDb);
  const narrow = yield* lookToward(hunt, last.bearingDeg);
  if (narrow && narrow.leastGainDb < last.leastGainDb + FARTHER_DB && !flipped(last.bearingDeg, narrow.bearingDeg)) return narrow;
  return yield* look(hunt);
}

function* stepTo(hunt: Hunt, alongDeg: number, lengthM: number): Script<void> {
  const { at, map } = hunt.view.seen;
  const sides = hunt.random() < 0.5 ? [0, 40, -40, 80, -80] : [0, -40, 40, -80, 80];
  const to = sides.map((side) => stepAlong(at, alongDeg + side, lengthM)).find((place) => walkable(map, place));
  if (to) yield* walkThere(hunt, to, bearingDeg(at, stepAlong(at, alongDeg, lengthM)));
}

function* stepAndSay(hunt: Hunt, alongDeg: number, lengthM: number): Script<void> {
  yield* stepTo(hunt, alongDeg, lengthM);
  hunt.view = yield [{ type: 'declare' }];
}
