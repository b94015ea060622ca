import type { BestAtPlace } from '../ear/leastGain';
import { galacticNoiseDb, manMadeNoiseDb, thermalNoiseDbm } from '../radio/noise';
import type { Arrivals, Wave } from '../radio/wave';
import type { AtTerminal } from '../receiver/receive';
import { toDb, toPowerRatio } from '../units/decibels';
import type { MapPoint } from '../units/frames';
import { type BuzzHere, buzzHere } from './buzz';
import type { Exercise } from './exercise';
import type { Hold } from './state';
import { tagAt } from './tagMotion';

/** Free-space impedance over 4 pi, and the speed of light: field to power in an isotropic antenna, lambda² |E|²/(480 pi²). */
const isotropicWatts = (fieldSquared: number, frequencyMHz: number): number =>
  (fieldSquared * (299.792458 / frequencyMHz) ** 2) / (480 * Math.PI * Math.PI);

/** What one tag's pulse brings to a place, before any antenna. */
export type TagHere = {
  readonly tag: number;
  readonly tagAt: MapPoint;
  readonly arrivals: Arrivals;
  /** Present strength, dBm e.i.r.p., and carrier, MHz. */
  readonly eirpDbm: number;
  readonly carrierMHz: number;
  readonly isotropicDbm: number;
  readonly buzzDbm: BuzzHere;
};

/** The waves of a tag at a place and time. */
export function tagHere(exercise: Exercise, tag: number, at: MapPoint, heightM: number, timeS: number): TagHere {
  const plan = exercise.scenario.tags[tag]!;
  const place = tagAt(exercise.scenario, tag, timeS);
  const arrivals = exercise.airspace(tag, place).arrivalsAt(at, heightM);
  const eirpDbm = plan.eirpDbm - (plan.decayDbPerHour * timeS) / 3600;
  const fieldSquared = arrivals.waves.reduce((sum, wave) => sum + squaredField(wave), 0);
  return {
    tag,
    tagAt: place,
    arrivals,
    eirpDbm,
    carrierMHz: plan.frequencyMHz + (plan.driftHzPerHour * timeS) / 3.6e9,
    isotropicDbm: eirpDbm + toDb(isotropicWatts(fieldSquared, plan.frequencyMHz)),
    buzzDbm: buzzHere(exercise, tag, place, at, heightM),
  };
}

/** Power of a tag's pulse at the terminal of the antenna as it is held, dBm. */
export function terminalDbm(exercise: Exercise, here: TagHere, hold: Hold): number {
  const squaredVoltage = exercise.antenna(hold.antenna, here.tag).fan(here.arrivals.waves);
  return (
    here.eirpDbm +
    toDb(isotropicWatts(squaredVoltage(hold.headingDeg, hold.rollDeg, hold.raised), exercise.scenario.tags[here.tag]!.frequencyMHz))
  );
}

/** Noise that is everywhere: outside (man-made and galactic) and the receiver's own, dBm in its bandwidth. */
export function noiseDbm(exercise: Exercise): { readonly outsideNoiseDbm: number; readonly ownNoiseDbm: number } {
  const { radio, kit, tags } = exercise.scenario;
  const mhz = tags[0]!.frequencyMHz;
  const thermal = thermalNoiseDbm(2_500);
  const outside = toPowerRatio(manMadeNoiseDb(radio.noise, mhz)) + toPowerRatio(galacticNoiseDb(mhz));
  return { outsideNoiseDbm: thermal + toDb(outside), ownNoiseDbm: thermal + toDb(toPowerRatio(kit.noiseFigureDb) - 1) };
}

/** All that meets the receiver for one pulse. */
export function atTerminal(exercise: Exercise, here: TagHere, hold: Hold): AtTerminal {
  return {
    powerDbm: terminalDbm(exercise, here, hold),
    isotropicDbm: here.isotropicDbm,
    tagMHz: here.carrierMHz,
    ...noiseDbm(exercise),
    buzzDbm: here.buzzDbm(hold),
  };
}

/** The antenna's best heading and roll for a tag here: what it brings there. */
export type BestHold = { readonly headingDeg: number; readonly rollDeg: number; readonly powerDbm: number };

/** Waves this far under the strongest don't move the loudest side by much: they are left out of the first look round. */
const LEFT_OUT_DB = 22;

/**
 * Looks round in steps of 15 degrees at three rolls under the strongest waves, then closes in to a degree under all of them.
 * The power is that of all waves at the hold it ends on.
 */
export function bestHold(exercise: Exercise, here: TagHere, antenna: Hold['antenna'], raised = false): BestHold {
  const receiving = exercise.antenna(antenna, here.tag);
  let [heading, roll, best] = [0, 0, -1];
  let fan = receiving.fan(strongestOf(here.arrivals.waves));
  const look = (headingDeg: number, rollDeg: number) => {
    const value = fan(headingDeg, rollDeg, raised);
    if (value > best) [heading, roll, best] = [headingDeg, rollDeg, value];
  };
  for (const rollDeg of [0, 45, 90]) for (let headingDeg = 0; headingDeg < 360; headingDeg += 15) look(headingDeg, rollDeg);
  fan = receiving.fan(here.arrivals.waves);
  best = fan(heading, roll, raised);
  for (let stepDeg = 8; stepDeg >= 1; stepDeg /= 2) {
    for (const [dh, dr] of [
      [-1, 0],
      [1, 0],
      [0, -2],
      [0, 2],
    ] as const) {
      look(heading + dh * stepDeg, Math.min(90, Math.max(0, roll + dr * stepDeg)));
    }
  }
  const mhz = exercise.scenario.tags[here.tag]!.frequencyMHz;
  return { headingDeg: (heading + 360) % 360, rollDeg: roll, powerDbm: here.eirpDbm + toDb(isotropicWatts(best, mhz)) };
}

const squaredField = (w: Wave): number =>
  w.eastRe * w.eastRe + w.eastIm * w.eastIm + w.northRe * w.northRe + w.northIm * w.northIm + w.upRe * w.upRe + w.upIm * w.upIm;

function strongestOf(waves: readonly Wave[]): readonly Wave[] {
  const squared = waves.map(squaredField);
  const least = Math.max(...squared) * 10 ** (-LEFT_OUT_DB / 10);
  return waves.filter((_, i) => squared[i]! >= least);
}

/** The same with the noise, for least gain. */
export const bestAtPlace = (exercise: Exercise, here: TagHere, best: BestHold, antenna: Hold['antenna'], raised = false): BestAtPlace => ({
  powerDbm: best.powerDbm,
  ...noiseDbm(exercise),
  buzzDbm: here.buzzDbm({ ...best, antenna, raised }),
  pulseMs: exercise.scenario.tags[here.tag]!.pulseMs,
});
