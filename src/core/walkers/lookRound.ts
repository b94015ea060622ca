import { turnDeg } from '../units/angles';
import { bearingByEar, JUDGEMENT_SD_DB, type Judged } from './bearingByEar';
import { doAndWait, pointAt, type Script, settingFor, sweepBy } from './hands';
import { type Hunt, normalDraw } from './hunt';
import type { HeardHere } from './policy';

export type Look = { readonly bearingDeg: number; readonly peakDb: number; readonly leastGainDb: number };

/** Rates that leave about one pulse to 20 degrees in a look all round, and to 13 in a narrow one. */
const ROUND_DEG_PER_PULSE = 20;
const NARROW_DEG_PER_PULSE = 13;
const NARROW_HALF_DEG = 65;
/** Over this at the best heading the arc is too wide to halve; under that it has holes. */
const TOO_LOUD_OVER_WANTED_DB = 8;
const TOO_FAINT_UNDER_WANTED_DB = 6;
/** Less than this between the axes is the ear's doubt, not the tag's. */
const AXIS_DB = 2;

const netOf = ({ view }: Hunt): number => view.seen.controls.gainDb - view.seen.controls.attenuatorDb;
const pulseS = ({ view }: Hunt): number => 60 / view.seen.tagList[0]!.pulsesPerMinute;

/** The antenna has come to rest before the hand goes to the knob, and the knob to rest before the antenna turns. */
const REST_S = 0.7;

/** Sets the gain with the antenna at rest. */
export function* setNet(hunt: Hunt, netGainDb: number): Script<void> {
  if (Math.round(netGainDb) === netOf(hunt)) return;
  hunt.view = (yield* doAndWait([], REST_S)).view;
  hunt.view = (yield* doAndWait(settingFor(netGainDb), REST_S)).view;
}

/** What a listener makes of the pulses of a sweep. */
const judged = (hunt: Hunt, heard: readonly HeardHere[]): readonly Judged[] =>
  heard.map(({ headingDeg, loudnessDb, audible }) => ({
    headingDeg,
    audible,
    loudnessDb: loudnessDb + JUDGEMENT_SD_DB * normalDraw(hunt.random),
  }));

function* sweep(hunt: Hunt, centreDeg: number | null): Script<readonly HeardHere[]> {
  if (centreDeg === null) return yield* fidgeting(hunt, 365, ROUND_DEG_PER_PULSE / pulseS(hunt));
  hunt.view = yield* pointAt(hunt.view.seen.hold.headingDeg, centreDeg - NARROW_HALF_DEG);
  return yield* fidgeting(hunt, 2 * NARROW_HALF_DEG, NARROW_DEG_PER_PULSE / pulseS(hunt));
}

/** A sweep in one go, or with the knob turned to and fro in it. */
function* fidgeting(hunt: Hunt, byDeg: number, rateDegPerS: number): Script<readonly HeardHere[]> {
  const pieces = hunt.decisions.fidgets + 1;
  const heard: HeardHere[] = [];
  for (let i = 0; i < pieces; i++) {
    const part = yield* sweepBy(byDeg / pieces, rateDegPerS);
    hunt.view = part.view;
    heard.push(...part.heard);
    if (i + 1 < pieces) hunt.view = yield [{ type: 'setGain', gainDb: hunt.view.seen.controls.gainDb + (i % 2 === 0 ? 3 : -3) }];
  }
  return heard;
}

/**
 * Sweeps and sets the gain in turn until the loudest heading is as loud as wanted.
 * @returns `null` where nothing is heard at any gain
 */
export function* look(hunt: Hunt, centreDeg: number | null): Script<Look | null> {
  const { wantedDb, cuts } = hunt.decisions;
  for (let tries = 0; tries < 9; tries++) {
    const heard = yield* sweep(hunt, centreDeg);
    const net = netOf(hunt);
    const found = bearingByEar(judged(hunt, heard));
    if (found) hunt.view = yield* pointAt(hunt.view.seen.hold.headingDeg, found.bearingDeg);
    const flat = heard.some(({ flatOut, audible }) => flatOut && audible);
    if (found && cuts && net > -30 && (flat || found.peakDb > wantedDb + TOO_LOUD_OVER_WANTED_DB)) {
      yield* setNet(hunt, Math.max(-30, net - (flat ? 30 : found.peakDb - wantedDb)));
      continue;
    }
    const faint = !found || found.peakDb < wantedDb - TOO_FAINT_UNDER_WANTED_DB;
    if (faint && net < 90 && tries < 8) {
      yield* setNet(hunt, net + (found ? wantedDb - found.peakDb : heard.some(({ audible }) => audible) ? 8 : 16));
      continue;
    }
    if (!found) return null;
    return { ...found, leastGainDb: net - found.peakDb };
  }
  return null;
}

/** A look all round, then a narrow sweep over the best side for the bearing. */
export function* lookAllRound(hunt: Hunt): Script<Look | null> {
  const coarse = yield* look(hunt, null);
  if (!coarse) return null;
  const fine = yield* look(hunt, coarse.bearingDeg);
  return fine && Math.abs(turnDeg(coarse.bearingDeg, fine.bearingDeg)) < 60 ? fine : coarse;
}

/**
 * Looks all round with the antenna upright and flat, and keeps the axis that needs less gain: across the tag's axis the sides
 * that sound loudest are not the tag's. @returns whether anything was heard on either axis
 */
export function* chooseAxis(hunt: Hunt): Script<boolean> {
  const needs: { readonly rollDeg: number; readonly leastGainDb: number }[] = [];
  for (const rollDeg of [90, 0]) {
    hunt.view = (yield* doAndWait([{ type: 'roll', toDeg: rollDeg }], REST_S)).view;
    const found = yield* look(hunt, null);
    if (found) needs.push({ rollDeg, leastGainDb: found.leastGainDb });
  }
  if (needs.length === 0) return false;
  const best = needs.reduce((a, b) => (b.leastGainDb < a.leastGainDb - AXIS_DB ? b : a));
  hunt.view = (yield* doAndWait([{ type: 'roll', toDeg: best.rollDeg }], REST_S)).view;
  yield* setNet(hunt, best.leastGainDb + hunt.decisions.wantedDb);
  return true;
}
