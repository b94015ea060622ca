import { turnDeg, wrapBearingDeg } from '../units/angles';
import { bearingDeg, distanceM, type MapPoint, stepAlong } from '../units/frames';
import { walkable } from '../world/walking';
import { doAndWait, onNote, pointAt, type Script } from './hands';
import type { Hunt } from './hunt';
import { setNet } from './lookRound';
import type { HeardHere } from './policy';

/** Listening on the way: after so many pulses the gain is looked at again. */
const RECENT = 5;
const LOUD_DB = 18;

/**
 * Walks to a place with the antenna held where the tag is thought to be, turning the gain down as the beep grows and up as
 * it fades. Goes round what blocks the way; gives up after a few detours. @returns whether it got there
 */
export function* walkThere(hunt: Hunt, to: MapPoint, holdDeg: number): Script<boolean> {
  for (let detour = 0; detour < 5; detour++) {
    hunt.view = yield* pointAt(hunt.view.seen.hold.headingDeg, holdDeg);
    const { paceMPerS } = hunt.view.seen.limits;
    hunt.view = yield [{ type: 'walkTo', at: to, paceMPerS }];
    const blocked = yield* walkOn(hunt);
    if (!blocked) return true;
    yield* goRound(hunt, to, detour);
  }
  return false;
}

/** Goes on until the legs stand; the gain follows the sound. @returns whether something was in the way */
function* walkOn(hunt: Hunt): Script<boolean> {
  let recent: HeardHere[] = [];
  while (hunt.view.seen.legs.paceMPerS > 0) {
    hunt.view = yield [];
    recent.push(...onNote(hunt.view.heard));
    if (recent.length < RECENT) continue;
    const net = hunt.view.seen.controls.gainDb - hunt.view.seen.controls.attenuatorDb;
    const heard = recent.filter(({ audible }) => audible);
    const mean = heard.reduce((sum, { loudnessDb }) => sum + loudnessDb, 0) / Math.max(1, heard.length);
    recent = [];
    if (heard.length > 0 && mean > LOUD_DB && hunt.decisions.cuts) yield* setNet(hunt, net - (mean - hunt.decisions.wantedDb));
    else if (heard.length === 0) yield* setNet(hunt, net + 5);
  }
  return hunt.view.seen.blocked;
}

/** Steps aside, farther each time, on the side that is open. */
function* goRound(hunt: Hunt, to: MapPoint, detour: number): Script<void> {
  const { seen } = hunt.view;
  const aheadDeg = bearingDeg(seen.at, to);
  const stepM = 30 + 30 * detour;
  const sides = detour % 2 === 0 ? [70, -70, 110, -110] : [-70, 70, -110, 110];
  for (const side of sides) {
    const at = stepAlong(seen.at, aheadDeg + side, stepM);
    if (!walkable(seen.map, at)) continue;
    hunt.view = yield [{ type: 'walkTo', at, paceMPerS: seen.limits.paceMPerS }];
    yield* walkOn(hunt);
    if (distanceM(seen.at, hunt.view.seen.at) > stepM / 2) return;
  }
  const back = stepAlong(hunt.view.seen.at, wrapBearingDeg(aheadDeg + 180), 20);
  hunt.view = yield [{ type: 'walkTo', at: back, paceMPerS: seen.limits.paceMPerS }];
  yield* walkOn(hunt);
}

/** Turned away by more than a right angle: what was ahead is now behind. */
export const flipped = (beforeDeg: number, nowDeg: number): boolean => Math.abs(turnDeg(beforeDeg, nowDeg)) > 100;

export const pause = (seconds: number) => doAndWait([], seconds);
