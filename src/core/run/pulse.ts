import { type HeardPulse, hearingChance, loudnessDb } from '../ear/hear';
import { leastGainDb } from '../ear/leastGain';
import { type Listener, USUAL_LISTENER } from '../ear/loudness';
import { randomFor } from '../random/draw';
import { outsideOf, receive } from '../receiver/receive';
import { bearingDeg, distanceM, type MapPoint } from '../units/frames';
import { buzzHere } from './buzz';
import type { Exercise } from './exercise';
import { asIntervened } from './intervention';
import { atTerminal, bestAtPlace, noiseDbm, type TagHere, tagHere } from './sense';
import { standingBestHold } from './standingHold';
import { antennaHeightM, type RunState, timeS } from './state';
import { tagAt } from './tagMotion';
import type { DuePulse } from './timetable';

/** What was so, whatever was heard: for debrief, least gain and errors only. */
export type PulseTruth = {
  readonly tag: number;
  readonly tagAt: MapPoint;
  readonly distanceM: number;
  readonly trueBearingDeg: number;
  readonly powerDbm: number;
  readonly bestHeadingDeg: number;
  readonly bestPowerDbm: number;
  /** Gain less attenuation, `null` where no setting makes the pulse heard. */
  readonly leastGainDb: number | null;
  readonly excessDb: number | null;
};

export type Pulse = { readonly heard: HeardPulse; readonly truth: PulseTruth };

const hundredth = (value: number): number => Math.round(Math.max(-999, value) * 100) / 100;
const tenth = (value: number): number => Math.round(value * 10) / 10;

/**
 * One pulse from end to end: timetable, waves, antenna, receiver, ear; rounded, and split into what is heard and what is
 * so. The voice plays `heard`; walkers and habits that concern hearing see `heard` alone.
 */
export function pulseNow(opened: Exercise, state: RunState, due: DuePulse, listener: Listener = USUAL_LISTENER): Pulse {
  const exercise = asIntervened(opened, state);
  const plan = exercise.scenario.tags[due.tag]!;
  const here = tagHere(exercise, due.tag, state.at, antennaHeightM(state.hold), due.atS);
  const input = atTerminal(exercise, here, state.hold);
  const received = receive(input, state.controls);
  const chance = hearingChance(received, plan.pulseMs, listener);
  const draw = randomFor(exercise.scenario.seed, 'pulse', (due.tag + 1) * 1_000_000 + due.number)();
  const heard: HeardPulse = {
    atS: due.atS,
    durationS: plan.pulseMs / 1000,
    pitchHz: tenth(received.pitchHz),
    levelDb: hundredth(received.levelDb),
    loudnessDb: hundredth(loudnessDb(received, plan.pulseMs, listener)),
    audible: draw < chance,
    flatOut: received.flatOut,
    sUnits: tenth(received.sUnits),
  };
  return { heard, truth: truthOf(exercise, state, here, input.powerDbm, listener) };
}

/**
 * Level of a pulse out of the receiver with the hands as they are in `state`: while it sounds it follows them. What is recorded is
 * the pulse as it began.
 */
export function levelNowDb(opened: Exercise, state: RunState, due: Pick<DuePulse, 'tag' | 'atS'>): number {
  const exercise = asIntervened(opened, state);
  const here = tagHere(exercise, due.tag, state.at, antennaHeightM(state.hold), due.atS);
  return hundredth(receive(atTerminal(exercise, here, state.hold), state.controls).levelDb);
}

function truthOf(exercise: Exercise, state: RunState, here: TagHere, powerDbm: number, listener: Listener): PulseTruth {
  const best = standingBestHold(exercise, here, state.hold.antenna, state.hold.raised);
  const least = leastGainDb(bestAtPlace(exercise, here, best, state.hold.antenna, state.hold.raised), listener);
  return {
    tag: here.tag,
    tagAt: here.tagAt,
    distanceM: tenth(distanceM(state.at, here.tagAt)),
    trueBearingDeg: hundredth(bearingDeg(state.at, here.tagAt)),
    powerDbm: hundredth(powerDbm),
    bestHeadingDeg: tenth(best.headingDeg),
    bestPowerDbm: hundredth(best.powerDbm),
    leastGainDb: least,
    excessDb: least === null ? null : hundredth(state.controls.gainDb - state.controls.attenuatorDb - least),
  };
}

/** What sounds between the pulses, dB re the limiter's ceiling. */
export type Background = { readonly noiseDb: number; readonly buzzDb: number };

export function backgroundNow(opened: Exercise, state: RunState): Background {
  const exercise = asIntervened(opened, state);
  const place = tagAt(exercise.scenario, 0, timeS(state));
  const buzzDbm = buzzHere(exercise, 0, place, state.at, antennaHeightM(state.hold))(state.hold);
  const outside = outsideOf({ ...noiseDbm(exercise), buzzDbm }, state.controls);
  return { noiseDb: hundredth(outside.noiseDb), buzzDb: hundredth(outside.buzzDb) };
}
