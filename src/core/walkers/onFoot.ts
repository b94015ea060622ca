import { TICKS_PER_S } from '../run/state';
import { turnDeg, wrapBearingDeg } from '../units/angles';
import { bearingDeg, distanceM, type MapPoint, stepAlong } from '../units/frames';
import { walkable } from '../world/walking';
import { doAndWait, onNote, pointAt, type Script } from './hands';
import type { Hunt } from './hunt';
import { setNet } from './lookRound';
import type { HeardHere } from './policy';
import { wayThere } from './wayThere';

/** Listening on the way: after so many pulses the gain is looked at again. */
const RECENT = 5;
const LOUD_OVER_WANTED_DB = 5;
/** One who stands about between places walks this long at a time. */
const WALKED_BEFORE_STANDING_S = 15;

/**
 * Walks to a place by the way that the map shows, with the antenna held where the tag is thought to be, turning the gain down
 * as the beep grows and up as it fades. @returns whether it got there
 */
export function* walkThere(hunt: Hunt, to: MapPoint, holdDeg: number): Script<boolean> {
  hunt.view = yield* pointAt(hunt.view.seen.hold.headingDeg, holdDeg);
  for (let detour = 0; detour < 4; detour++) {
    const { seen } = hunt.view;
    const way = wayThere(seen.map, seen.at, to, seen.limits.paceMPerS);
    if (!way) return false;
    let blocked = false;
    for (const corner of way) {
      blocked = yield* goTo(hunt, corner);
      if (blocked) break;
    }
    if (!blocked) return true;
    yield* goRound(hunt, to, detour);
  }
  return false;
}

/** One straight stretch; @returns whether something was in the way */
function* goTo(hunt: Hunt, to: MapPoint): Script<boolean> {
  for (;;) {
    hunt.view = yield [{ type: 'walkTo', at: to, paceMPerS: hunt.view.seen.limits.paceMPerS }];
    const { standsPerWalkedS } = hunt.decisions;
    const walkedS = yield* walkOn(hunt, standsPerWalkedS > 0 ? WALKED_BEFORE_STANDING_S : Number.POSITIVE_INFINITY);
    if (walkedS < WALKED_BEFORE_STANDING_S || standsPerWalkedS === 0) return hunt.view.seen.blocked;
    const stop = { type: 'walk', courseDeg: hunt.view.seen.legs.courseDeg, paceMPerS: 0 } as const;
    hunt.view = (yield* doAndWait([stop], standsPerWalkedS * walkedS)).view;
  }
}

/** Goes on until the legs stand or the time is over; the gain follows the sound. @returns seconds walked */
function* walkOn(hunt: Hunt, mostS: number): Script<number> {
  let recent: HeardHere[] = [];
  let ticks = 0;
  while (hunt.view.seen.legs.paceMPerS > 0 && ticks < mostS * TICKS_PER_S) {
    hunt.view = yield [];
    ticks++;
    recent.push(...onNote(hunt.view.heard));
    if (recent.length < RECENT) continue;
    yield* followLoudness(hunt, recent);
    recent = [];
  }
  return ticks / TICKS_PER_S;
}

function* followLoudness(hunt: Hunt, recent: readonly HeardHere[]): Script<void> {
  const { wantedDb, cuts } = hunt.decisions;
  const net = hunt.view.seen.controls.gainDb - hunt.view.seen.controls.attenuatorDb;
  const heard = recent.filter(({ audible }) => audible);
  const mean = heard.reduce((sum, { loudnessDb }) => sum + loudnessDb, 0) / Math.max(1, heard.length);
  if (heard.length > 0 && mean > wantedDb + LOUD_OVER_WANTED_DB && cuts) yield* setNet(hunt, net - (mean - wantedDb));
  else if (heard.length === 0) yield* setNet(hunt, net + 5);
}

/** Steps aside, farther each time, on the side that is open. */
function* goRound(hunt: Hunt, to: MapPoint, detour: number): Script<void> {
  const { seen } = hunt.view;
  const aheadDeg = bearingDeg(seen.at, to);
  const stepM = 15 + 20 * detour;
  const sides = detour % 2 === 0 ? [70, -70, 110, -110] : [-70, 70, -110, 110];
  for (const side of [...sides, 180]) {
    const at = stepAlong(seen.at, wrapBearingDeg(aheadDeg + side), stepM);
    if (!walkable(seen.map, at)) continue;
    hunt.view = yield [{ type: 'walkTo', at, paceMPerS: seen.limits.paceMPerS }];
    yield* walkOn(hunt, Number.POSITIVE_INFINITY);
    if (distanceM(seen.at, hunt.view.seen.at) > stepM / 2) return;
  }
}

/** Turned away by more than a right angle: what was ahead is now behind. */
export const flipped = (beforeDeg: number, nowDeg: number): boolean => Math.abs(turnDeg(beforeDeg, nowDeg)) > 100;
