import { leastGainDb } from '../ear/leastGain';
import { type Listener, USUAL_LISTENER } from '../ear/loudness';
import { type Air, heardAt, makeAir, PULSE_MS } from '../listening/air';
import type { Picture } from '../listening/picture';
import { FIRST_SETTINGS, type Settings } from '../listening/settings';
import { makeSmallScene } from '../listening/smallScene';
import type { AntennaId } from '../scenario/schema';
import { toRad } from '../units/angles';
import { stepAlong } from '../units/frames';
import { COVER } from '../world/world';
import type { Drawn } from './drawn';
import { planAround } from './drill';

/** The tag of the drills: 6 dBm, as in the Listening room. */
export const EIRP_DBM = 6;

/** One tag, seen from where one stands over level ground. */
export type PlainView = {
  readonly air: Air;
  readonly bearingDeg: number;
  readonly distanceM: number;
  /** Gain that just hears it, antenna at its best and upright, dB. */
  readonly leastDb: (listener?: Listener) => number;
};

type Wish = {
  readonly fromM: number;
  readonly toM: number;
  readonly antennas?: readonly AntennaId[];
  /** A wood between, from so far before the tag and so deep. */
  readonly woodM?: number;
};

/** Draws a tag at any bearing, its height and its lean a little different every time. */
export function plainView(draw: Drawn, { fromM, toM, antennas = ['yagi3'], woodM = 0 }: Wish): PlainView {
  const distanceM = draw.scaled(fromM, toM);
  const bearingDeg = draw.bearingDeg();
  const sizeM = Math.ceil((2 * distanceM + 200) / 20) * 20;
  const here = { eM: sizeM / 2, nM: sizeM / 2 };
  const tagAt = stepAlong(here, bearingDeg, distanceM);
  const [leanDeg, towardDeg, heightM] = [draw.between(0, 35), draw.bearingDeg(), draw.between(0.3, 1.4)];
  const inWood = (eM: number, nM: number) => {
    const off = Math.hypot(eM - tagAt.eM, nM - tagAt.nM);
    return off > 30 && off < 30 + woodM;
  };
  const cover = (eM: number, nM: number) => (inWood(eM, nM) ? COVER.wood : COVER.open);
  const scene = makeSmallScene({ sizeM, cellM: 20, tag: { at: tagAt, heightM, leanDeg, towardDeg }, ...(woodM > 0 && { cover }) });
  const antenna = draw.oneOf(antennas);
  const air = makeAir({ waves: [scene.direct(here)], eirpDbm: EIRP_DBM, antenna });
  return { air, bearingDeg, distanceM, leastDb: (listener = USUAL_LISTENER) => leastUpright(air, bearingDeg, listener) };
}

/** Gain that just hears the beep straight ahead, antenna upright, dB; the whole range where none does. */
export function leastUpright(air: Air, bearingDeg: number, listener: Listener): number {
  const powerDbm = air.powerDbm(bearingDeg, FIRST_SETTINGS.rollDeg);
  const { outsideNoiseDbm, ownNoiseDbm } = air;
  return leastGainDb({ powerDbm, outsideNoiseDbm, ownNoiseDbm, buzzDbm: Number.NEGATIVE_INFINITY, pulseMs: PULSE_MS }, listener) ?? 90;
}

/** Front less back as they are heard at a gain, dB. */
export function frontToBackDb({ air, bearingDeg }: PlainView, settings: Settings): number {
  return heardAt(air, settings, bearingDeg).levelDb - heardAt(air, settings, bearingDeg + 180).levelDb;
}

/** From above: you in the middle, the tag where it is. */
export function viewFromAbove({ bearingDeg, distanceM }: PlainView, said: string, markedDeg: readonly number[] = []): Picture {
  const at = (deg: number, m: number) => [m * Math.sin(toRad(deg)), m * Math.cos(toRad(deg))] as const;
  const tag = at(bearingDeg, distanceM);
  return planAround(1.2 * distanceM, said, [
    ...markedDeg.map((deg) => ({ kind: 'bearing' as const, from: [0, 0] as const, to: at(deg, 1.05 * distanceM), back: false })),
    { kind: 'wave', points: [tag, [0, 0]], wave: 'direct', strength: 1 },
    { kind: 'tag', at: tag },
    { kind: 'you', at: [0, 0], now: true },
  ]);
}
