import { CLEAREST_NOTE_HZ } from '../receiver/tuning';
import { begin } from '../run/begin';
import type { Exercise } from '../run/exercise';
import type { Live } from '../run/live';
import type { Pulse } from '../run/pulse';
import { type RunState, TICKS_PER_S } from '../run/state';
import { advance, step } from '../run/step';
import type { HabitId, Moment } from '../technique/habit';
import { turnDeg } from '../units/angles';
import { distanceM, type MapPoint } from '../units/frames';
import { nearestBetween } from '../world/nearestWay';
import { coverAt } from '../world/profile';
import { COVER, type World } from '../world/world';
import { demonstrationFor, type HearAgain, type HeardThen } from './hearAgain';
import { type Surroundings, situationOf } from './situation';

/** A moment's own pulses reach this far round it, s: some moments are an instant between two beeps. */
const AROUND_S = 3;
/** The rods are judged only where the antenna pointed at the beep. */
const POINTED_DEG = 30;

/** The demonstration to hear a moment of a run again by; null where no pulse was due around it. */
export function hearMomentAgain(exercise: Exercise, live: Live, habit: HabitId, moment: Moment): HearAgain | null {
  const pulse = tellingPulse(live.pulses, moment);
  if (!pulse) return null;
  const state = stateAt(exercise, live, Math.floor(pulse.heard.atS * TICKS_PER_S));
  const then = heardThen(pulse, state);
  return demonstrationFor(situationOf(habit, then, surroundingsOf(exercise.world, pulse, state)), then);
}

/** Of the moment's pulses the one with most gain to spare where that was the fault, else the middle one. */
function tellingPulse(pulses: readonly Pulse[], { fromS, toS, good }: Moment): Pulse | undefined {
  const within = pulses.filter(({ heard }) => heard.atS >= fromS - AROUND_S && heard.atS <= toS + AROUND_S);
  const flatOut = within.find(({ heard }) => heard.flatOut && !good);
  return flatOut ?? within[Math.floor(within.length / 2)];
}

/** Poses alone are lived through again: the pulses are known. */
function stateAt({ scenario, world }: Exercise, { log, state: end }: Live, tick: number): RunState {
  let state = begin(scenario);
  let next = 0;
  while (state.tick < Math.min(tick, end.tick) && state.ending === null) {
    for (; next < log.length && log[next]!.tick <= state.tick; next++) state = step(scenario, state, log[next]!.action);
    state = advance(scenario, world, state);
  }
  return state;
}

const heardThen = ({ heard, truth }: Pulse, { controls, hold }: RunState): HeardThen => ({
  gainDb: controls.gainDb,
  attenuatorDb: controls.attenuatorDb,
  rollDeg: hold.rollDeg,
  distanceM: truth.distanceM,
  offDeg: turnDeg(truth.trueBearingDeg, hold.headingDeg),
  offsetHz: heard.pitchHz - CLEAREST_NOTE_HZ,
  excessDb: truth.excessDb,
});

function surroundingsOf(world: World, { heard, truth }: Pulse, { at, hold }: RunState): Surroundings {
  const pointed = Math.abs(turnDeg(truth.bestHeadingDeg, hold.headingDeg)) <= POINTED_DEG;
  return {
    audible: heard.audible,
    flatOut: heard.flatOut,
    wiresM: wiresM(world, at),
    inWood: coverAt(world, at.eM, at.nM) === COVER.wood,
    axisLossDb: pointed ? truth.bestPowerDbm - truth.powerDbm : 0,
  };
}

const wiresM = (world: World, at: MapPoint): number =>
  world.powerLines
    .flatMap(({ spans }) => spans)
    .reduce((nearest, { from, to }) => Math.min(nearest, distanceM(at, nearestBetween(from, to, at))), Number.POSITIVE_INFINITY);
