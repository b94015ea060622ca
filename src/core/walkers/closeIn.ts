import { widestCrossingDeg } from '../fix/crossing';
import { bestSupportedDirection } from '../fix/support';
import { distanceFromLeastGainM } from '../technique/gainDistance';
import { turnDeg } from '../units/angles';
import { bearingDeg, distanceM, type MapPoint, stepAlong } from '../units/frames';
import { walkable } from '../world/walking';
import type { Script } from './hands';
import type { Hunt, HuntReading } from './hunt';
import { type Look, lookDoubtingAxis, lookToward, setNet, turnOver } from './lookRound';
import { flipped, walkThere } from './onFoot';
import { straightWayOpen } from './wayThere';

/** Gain this low says the tag is close by. */
export const CLOSE_M = 90;
/** Looks before one steps back and takes a fresh reading from farther off. */
const MOST_LOOKS = 40;
/** Needing this much more gain than at the last stop, one has gone past it or astray: look all round again. */
const FARTHER_DB = 3;
const MOST_STRETCH = 4;
const MOST_STEP_M = 100;
/** A crossing of the last lines is walked to from here, if they cross by this. */
const CROSSING_WITHIN_M = 45;
const CROSSED_WELL_DEG = 35;
/** Lines from one and the same place cross at one's own feet, tag or not: believed only where the gain says so too. */
const OWN_FEET_M = 6;
const AT_ONES_FEET_M = 35;

/** The last fifty metres: short steps, a look after each, and "here" when the sound says so or turns behind. */
export function* closeIn(hunt: Hunt, first: Look): Script<void> {
  let before: Stop | null = null;
  let found: Look | null = yield* turnOver(hunt, first);
  let stretch = 1;
  let wrongBefore = hunt.view.seen.wrongDeclarations;
  const lines: HuntReading[] = [...hunt.readings.slice(-2)];
  for (let looks = 0; looks < MOST_LOOKS && found; looks++) {
    const here: Stop = { at: hunt.view.seen.at, found };
    if (distanceFromLeastGainM(found.leastGainDb) > 2.5 * CLOSE_M) return;
    stretch = before && growsLittle(before, here) ? Math.min(MOST_STRETCH, stretch * 1.5) : 1;
    lines.push({ at: here.at, bearingDeg: found.bearingDeg, leastGainDb: found.leastGainDb });
    const crossing = crossingOf(lines, here);
    yield* closer(hunt, before, here, { stretch, crossing });
    if (crossing) lines.length = 0; // the tag was not there: these lines lied
    before = here;
    const wrong = hunt.view.seen.wrongDeclarations;
    found = yield* lookAgain(hunt, found);
    if (found && wrong > wrongBefore) found = yield* turnOver(hunt, found);
    wrongBefore = wrong;
  }
}

type Known = { readonly stretch: number; readonly crossing: MapPoint | null };
type Stop = { readonly at: MapPoint; readonly found: Look };

/** The same side, no louder: the tag is in view and farther than the gain has it. */
const growsLittle = (before: Stop, { at, found }: Stop): boolean =>
  distanceM(before.at, at) > 2 &&
  before.found.leastGainDb - found.leastGainDb < FARTHER_DB &&
  Math.abs(turnDeg(before.found.bearingDeg, found.bearingDeg)) < 25;

/** Where the last lines cross well, if that is a few steps off; `null` elsewhere. */
function crossingOf(lines: readonly HuntReading[], { at, found }: Stop): MapPoint | null {
  const last = lines.slice(-4);
  const supported = bestSupportedDirection(last, at);
  const point = supported && supported.agreeing >= 3 ? supported.point : null;
  if (!point || distanceM(at, point) > CROSSING_WITHIN_M) return null;
  if (distanceM(at, point) < OWN_FEET_M && distanceFromLeastGainM(found.leastGainDb) > AT_ONES_FEET_M) return null;
  const places = last.map((line) => line.at);
  return widestCrossingDeg(places, point) >= CROSSED_WELL_DEG ? point : null;
}

/** One step, and "here" where the tag turned behind within a few steps or the gain is that of the last metres. */
function* closer(hunt: Hunt, before: Stop | null, { at, found }: Stop, known: Known): Script<void> {
  const { findWithinM } = hunt.view.seen.limits;
  const { stretch, crossing } = known;
  const guessM = distanceFromLeastGainM(found.leastGainDb);
  const apartM = before ? distanceM(before.at, at) : 0;
  const behind = before !== null && flipped(before.found.bearingDeg, found.bearingDeg) && apartM > 2 && apartM < MOST_STEP_M + 20;
  if (crossing) yield* stepAndSay(hunt, bearingDeg(at, crossing), Math.max(3, distanceM(at, crossing)));
  else if (behind) yield* stepAndSay(hunt, found.bearingDeg, Math.max(2, apartM / 2));
  else if (guessM < 1.6 * findWithinM) yield* stepAndSay(hunt, found.bearingDeg, stretch * Math.min(6, Math.max(3, 0.6 * guessM)));
  else yield* stepTo(hunt, found.bearingDeg, Math.min(MOST_STEP_M, stretch * Math.min(35, Math.max(4, 0.65 * guessM))));
}

/** A narrow look where the tag was last heard; all round where the sound says that one has passed it. */
function* lookAgain(hunt: Hunt, last: Look): Script<Look | null> {
  yield* setNet(hunt, last.leastGainDb + hunt.decisions.wantedDb);
  const narrow = yield* lookToward(hunt, last.bearingDeg);
  if (narrow && narrow.leastGainDb < last.leastGainDb + FARTHER_DB && !flipped(last.bearingDeg, narrow.bearingDeg)) return narrow;
  return yield* lookDoubtingAxis(hunt, last.leastGainDb);
}

function* stepTo(hunt: Hunt, alongDeg: number, lengthM: number): Script<void> {
  const { at, map } = hunt.view.seen;
  const sides = hunt.random() < 0.5 ? [0, 40, -40, 80, -80] : [0, -40, 40, -80, 80];
  const places = sides.map((side) => stepAlong(at, alongDeg + side, lengthM)).filter((place) => walkable(map, place));
  const to = places.find((place) => straightWayOpen(map, at, place)) ?? places[0];
  if (to) yield* walkThere(hunt, to, bearingDeg(at, stepAlong(at, alongDeg, lengthM)));
}

function* stepAndSay(hunt: Hunt, alongDeg: number, lengthM: number): Script<void> {
  yield* stepTo(hunt, alongDeg, lengthM);
  hunt.view = yield [{ type: 'declare' }];
}
