import type { Action } from '../run/actions';
import { TICKS_PER_S } from '../run/state';
import { turnDeg, wrapBearingDeg } from '../units/angles';
import type { HeardHere, View } from './policy';

/** A piece of a walker's script: acts tick by tick, hears what comes, and hands back the last view with its result. */
export type Script<T> = Generator<readonly Action[], T, View>;

/** Pulses of the tag that the dial is on: the others sound at another note. */
const NOTE_FROM_HZ = 500;
const NOTE_TO_HZ = 1_800;

export const onNote = (heard: readonly HeardHere[]): readonly HeardHere[] =>
  heard.filter(({ pitchHz }) => pitchHz >= NOTE_FROM_HZ && pitchHz <= NOTE_TO_HZ);

/** Does some actions at once, then waits; everything heard meanwhile. */
export function* doAndWait(actions: readonly Action[], seconds: number): Script<{ view: View; heard: readonly HeardHere[] }> {
  const heard: HeardHere[] = [];
  let view: View = yield actions;
  heard.push(...onNote(view.heard));
  for (let i = 1; i < Math.round(seconds * TICKS_PER_S); i++) {
    view = yield [];
    heard.push(...onNote(view.heard));
  }
  return { view, heard };
}

/** Turns the antenna by `byDeg` (signed) at a steady rate; everything heard on the way. The legs go on as they do. */
export function* sweepBy(byDeg: number, rateDegPerS: number): Script<{ view: View; heard: readonly HeardHere[] }> {
  const seconds = Math.abs(byDeg) / rateDegPerS;
  const turned = yield* doAndWait([{ type: 'spin', degPerS: Math.sign(byDeg) * rateDegPerS }], seconds);
  const view: View = yield [{ type: 'spin', degPerS: 0 }];
  return { view, heard: [...turned.heard, ...onNote(view.heard)] };
}

/** Brings the antenna to a heading the short way, quickly but not in a jump. */
export function* pointAt(fromDeg: number, toDeg: number): Script<View> {
  const byDeg = turnDeg(fromDeg, toDeg);
  if (Math.abs(byDeg) > 8) yield* sweepBy(byDeg * 0.98, 90);
  return yield [{ type: 'turn', toDeg: wrapBearingDeg(toDeg) }];
}

/** The setting that has a gain less attenuation, with no more attenuation than it needs. */
export function settingFor(netGainDb: number): readonly Action[] {
  const net = Math.min(90, Math.max(-30, Math.round(netGainDb)));
  const attenuatorDb = net >= 0 ? 0 : net >= -10 ? 10 : net >= -20 ? 20 : 30;
  return [
    { type: 'setAttenuator', attenuatorDb },
    { type: 'setGain', gainDb: net + attenuatorDb },
  ];
}
