import { turnDeg } from '../units/angles';
import { bearingByEar, JUDGEMENT_SD_DB, type Judged } from './bearingByEar';
import { doAndWait, pointAt, type Script, settingFor, sweepBy } from './hands';
import { type Hunt, normalDraw } from './hunt';
import type { HeardHere } from './policy';

export type Look = { readonly bearingDeg: number; readonly peakDb: number; readonly leastGainDb: number };

/** Rates that leave about one pulse to 22 degrees in a look all round, and to 13 in a narrow one. */
const ROUND_DEG_PER_PULSE = 22;
const NARROW_DEG_PER_PULSE = 13;
const NARROW_HALF_DEG = 60;
/** Over this at the best heading the arc is too wide to halve; under that it has holes. */
const TOO_LOUD_OVER_WANTED_DB = 7;
const TOO_FAINT_UNDER_WANTED_DB = 6;
/** Heard on more than this share of a look all round, front and back can't be told apart: take gain away, look again. */
const TOO_WIDE_SHARE = 0.65;
/** Off the middle of a narrow sweep by more, half the lobe was left out. */
const LOBE_IN_VIEW_DEG = 45;
/** Sweeps at one place before one makes do with what was heard. */
const MOST_SWEEPS = 6;
/** Less than this between the axes is the ear's doubt, not the tag's. */
const AXIS_DB = 2;
/** So much fainter than at the last place, the axis may be across the tag's. */
const AXIS_DOUBT_DB = 8;
/** A hand that fidgets turns the knob by this. */
const FIDGET_DB = 3;

const netOf = ({ view }: Hunt): number => view.seen.controls.gainDb - view.seen.controls.attenuatorDb;
const pulseS = ({ view }: Hunt): number => 60 / view.seen.tagList[view.seen.sought]!.pulsesPerMinute;

/** The antenna has come to rest before the hand goes to the knob, and the knob to rest before the antenna turns. */
const REST_S = 0.7;

/** Sets the gain with the antenna at rest. */
export function* setNet(hunt: Hunt, netGainDb: number): Script<void> {
  const wanted = Math.min(90, Math.max(-30, Math.round(netGainDb)));
  if (wanted === netOf(hunt)) return;
  hunt.view = (yield* doAndWait([], REST_S)).view;
  hunt.view = (yield* doAndWait(settingFor(wanted), REST_S)).view;
}

/** What a listener makes of the pulses of a sweep, all as loud as at the setting it ended with. */
function judged(hunt: Hunt, heard: readonly HeardHere[]): readonly Judged[] {
  const net = netOf(hunt);
  return heard.map(({ headingDeg, loudnessDb, audible, netGainDb }) => ({
    headingDeg,
    audible,
    loudnessDb: loudnessDb + (net - netGainDb) + JUDGEMENT_SD_DB * normalDraw(hunt.random),
  }));
}

type Swept = { readonly heard: readonly HeardHere[]; readonly found: ReturnType<typeof bearingByEar>; readonly flat: boolean };

/** One sweep, all round or to both sides of a bearing, and what is made of it; the antenna is left on the bearing. */
function* sweep(hunt: Hunt, centreDeg: number | null): Script<Swept> {
  if (centreDeg !== null) hunt.view = yield* pointAt(hunt.view.seen.hold.headingDeg, centreDeg - NARROW_HALF_DEG);
  const heard =
    centreDeg === null
      ? yield* turned(hunt, 350, ROUND_DEG_PER_PULSE / pulseS(hunt))
      : yield* turned(hunt, 2 * NARROW_HALF_DEG, NARROW_DEG_PER_PULSE / pulseS(hunt));
  const found = bearingByEar(judged(hunt, heard));
  if (found) hunt.view = yield* pointAt(hunt.view.seen.hold.headingDeg, found.bearingDeg);
  return { heard, found, flat: heard.some(({ flatOut, audible }) => flatOut && audible) };
}

/** Turns the antenna in one go, or with the knob turned in the middle of it. */
function* turned(hunt: Hunt, byDeg: number, rateDegPerS: number): Script<readonly HeardHere[]> {
  const heard: HeardHere[] = [];
  const fidgets = hunt.decisions.fidgetsIn(hunt.sweeps);
  const pieces = fidgets ? 2 : 1;
  for (let i = 0; i < pieces; i++) {
    const part = yield* sweepBy(byDeg / pieces, rateDegPerS);
    hunt.view = part.view;
    heard.push(...part.heard);
    if (i + 1 < pieces) hunt.view = yield [fidget(hunt)];
  }
  hunt.sweeps++;
  return heard;
}

function fidget({ view }: Hunt): { readonly type: 'setGain'; readonly gainDb: number } {
  const { gainDb } = view.seen.controls;
  return { type: 'setGain', gainDb: gainDb >= FIDGET_DB ? gainDb - FIDGET_DB : gainDb + FIDGET_DB };
}

/** How far the gain is to be moved after a sweep, dB; 0 where it serves. */
function correctionDb(hunt: Hunt, { found, flat, heard }: Swept, round: boolean): number {
  const { wantedDb, cuts } = hunt.decisions;
  const net = netOf(hunt);
  const loudDb = found ? found.peakDb - wantedDb : 0;
  const wide = round && heard.filter(({ audible }) => audible).length > TOO_WIDE_SHARE * heard.length;
  if (cuts && net > -30 && (flat || wide || loudDb > TOO_LOUD_OVER_WANTED_DB)) return -Math.max(flat ? 25 : wide ? 10 : 0, loudDb);
  if (net >= 90) return 0;
  if (!found) return heard.some(({ audible }) => audible) ? 8 : 16;
  return loudDb < -TOO_FAINT_UNDER_WANTED_DB ? -loudDb : 0;
}

/** Flat out, the peak says only how loud the receiver gets. One who doesn't cut knows this much better at the next place. */
const FLAT_OUT_HIDES_DB = 20;

function lookOf(hunt: Hunt, { flat }: Swept, found: NonNullable<Swept['found']>): Look {
  const hiddenDb = flat && !hunt.decisions.cuts ? FLAT_OUT_HIDES_DB : 0;
  return { ...found, leastGainDb: netOf(hunt) - found.peakDb - hiddenDb };
}

/**
 * Looks all round, setting the gain between sweeps, until one side is loudest.
 * @returns `null` where nothing is heard at any gain
 */
export function* lookAllRound(hunt: Hunt): Script<Look | null> {
  let last: Look | null = null;
  for (let tries = 0; tries < MOST_SWEEPS; tries++) {
    const swept = yield* sweep(hunt, null);
    const byDb = correctionDb(hunt, swept, true);
    if (swept.found) last = lookOf(hunt, swept, swept.found);
    if (byDb !== 0) yield* setNet(hunt, netOf(hunt) + byDb);
    // A loud side needs no second look all round: a narrow one at the right gain follows.
    const clear = swept.found && !swept.flat && byDb > -2 * TOO_LOUD_OVER_WANTED_DB;
    if (byDb === 0 || clear) return last;
  }
  return last;
}

/** A narrow sweep over a bearing, again where the gain was wrong or the loudest side lay at its edge. */
export function* lookToward(hunt: Hunt, bearingDeg: number): Script<Look | null> {
  let centreDeg = bearingDeg;
  for (let tries = 0; ; tries++) {
    const swept = yield* sweep(hunt, centreDeg);
    const byDb = correctionDb(hunt, swept, false);
    const edge = swept.found !== null && Math.abs(turnDeg(centreDeg, swept.found.bearingDeg)) > LOBE_IN_VIEW_DEG;
    if ((byDb === 0 && !edge) || tries === 3) return swept.found ? lookOf(hunt, swept, swept.found) : null;
    if (byDb !== 0) yield* setNet(hunt, netOf(hunt) + byDb);
    if (swept.found) centreDeg = swept.found.bearingDeg;
  }
}

/** A look all round, then a narrow sweep over the best side for the bearing. */
function* look(hunt: Hunt): Script<Look | null> {
  const coarse = yield* lookAllRound(hunt);
  if (!coarse) return null;
  return (yield* lookToward(hunt, coarse.bearingDeg)) ?? coarse;
}

/**
 * Looks all round with the antenna upright and flat, and keeps the axis that needs less gain: across the tag's axis the sides
 * that sound loudest are not the tag's. @returns the reading on that axis; `null` where nothing was heard on either
 */
export function* chooseAxis(hunt: Hunt): Script<Look | null> {
  let best: { readonly rollDeg: number; readonly found: Look } | null = null;
  for (const rollDeg of [90, 0]) {
    hunt.view = (yield* doAndWait([{ type: 'roll', toDeg: rollDeg }], REST_S)).view;
    const found = yield* lookAllRound(hunt);
    if (found && (!best || found.leastGainDb < best.found.leastGainDb - AXIS_DB)) best = { rollDeg, found };
  }
  if (!best) return null;
  hunt.view = (yield* doAndWait([{ type: 'roll', toDeg: best.rollDeg }], REST_S)).view;
  const wantedNetDb = best.found.leastGainDb + hunt.decisions.wantedDb;
  // One who doesn't cut leaves a loud setting as it is until the next place.
  if (hunt.decisions.cuts || wantedNetDb > netOf(hunt)) yield* setNet(hunt, wantedNetDb);
  return (yield* lookToward(hunt, best.found.bearingDeg)) ?? best.found;
}

/** Pulses listened to on each axis with the antenna still. */
const TURNED_OVER_PULSES = 3;

/**
 * Turns the antenna over on its bearing and keeps it so where the beep is louder. A tag passed close by may lie across the axis that
 * served from afar. @returns the look, taken again where the axis changed
 */
export function* turnOver(hunt: Hunt, found: Look): Script<Look> {
  const usualDeg = hunt.view.seen.hold.rollDeg;
  const usualDb = yield* loudnessHeld(hunt);
  hunt.view = (yield* doAndWait([{ type: 'roll', toDeg: usualDeg === 90 ? 0 : 90 }], REST_S)).view;
  const turnedDb = yield* loudnessHeld(hunt);
  if (turnedDb > usualDb + AXIS_DB) {
    if (hunt.decisions.cuts) yield* setNet(hunt, netOf(hunt) - (turnedDb - usualDb));
    return (yield* look(hunt)) ?? found;
  }
  hunt.view = (yield* doAndWait([{ type: 'roll', toDeg: usualDeg }], REST_S)).view;
  return found;
}

/** Mean loudness of a few pulses with the antenna still, dB; lowest where none is heard. */
function* loudnessHeld(hunt: Hunt): Script<number> {
  const { view, heard } = yield* doAndWait([], TURNED_OVER_PULSES * pulseS(hunt));
  hunt.view = view;
  const audible = judged(hunt, heard).filter((pulse) => pulse.audible);
  return audible.length === 0 ? 0 : audible.reduce((sum, { loudnessDb }) => sum + loudnessDb, 0) / audible.length;
}

/** Needing far more gain than at the place before, or hearing nothing, it tries the other axis before it believes the ground. */
export function* lookDoubtingAxis(hunt: Hunt, beforeDb: number | null): Script<Look | null> {
  const found = yield* look(hunt);
  if (found && (beforeDb === null || found.leastGainDb < beforeDb + AXIS_DOUBT_DB)) return found;
  return (yield* chooseAxis(hunt)) ?? found;
}
