import { antennaById } from '../antenna/catalogue';
import type { ANTENNA_IDS, Scenario } from '../scenario/schema';
import { toRad, wrapBearingDeg } from '../units/angles';
import { bearingDeg, distanceM } from '../units/frames';
import { paceFactor, walkable } from '../world/walking';
import type { World } from '../world/world';
import type { Action } from './actions';
import { roundedMHz } from './begin';
import { endedByBound } from './bounds';
import { climbed, climbedDown, isAloft } from './climbing';
import { driven } from './drive';
import { interventionsWith } from './intervention';
import { staged } from './stages';
import { type RunState, TICK_S, TICKS_PER_S } from './state';
import { tagAt } from './tagMotion';
import { namedTag, taskOf } from './task';
import { boarded, canChangeTo, carriesOff, left } from './vehicle';

/** Seconds that changing the antenna takes: unscrew, fold out, screw (common practice, no source). */
const ANTENNA_CHANGE_S = 30;
const ATTENUATOR_STEPS_DB: readonly number[] = [0, 10, 20, 30];
const inRange = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));
const tenth = (value: number): number => Math.round(value * 10) / 10;

/**
 * One action done now: `step(state, action)` with what it needs of the exercise. Values out of range are brought to the
 * range's end, as a knob does; actions after the end change nothing.
 */
export function step(scenario: Scenario, state: RunState, action: Action): RunState {
  if (state.ending !== null) return state;
  switch (action.type) {
    case 'turn':
      return { ...state, hold: { ...state.hold, headingDeg: wrapBearingDeg(tenth(action.toDeg)) } };
    case 'spin':
      return { ...state, spinDegPerS: inRange(action.degPerS, -360, 360) };
    case 'roll':
      return { ...state, hold: { ...state.hold, rollDeg: inRange(tenth(action.toDeg), 0, 90) } };
    case 'raise':
      return { ...state, hold: { ...state.hold, raised: action.raised } };
    case 'setGain':
      return { ...state, controls: { ...state.controls, gainDb: inRange(tenth(action.gainDb), 0, 90) } };
    case 'setAttenuator':
      return ATTENUATOR_STEPS_DB.includes(action.attenuatorDb)
        ? { ...state, controls: { ...state.controls, attenuatorDb: action.attenuatorDb } }
        : state;
    case 'tune':
      return { ...state, controls: { ...state.controls, tunedMHz: roundedMHz(inRange(action.tunedMHz, 29.99, 500.01)) } };
    case 'changeAntenna':
      return changeAntenna(scenario, state, action.antenna);
    case 'walk':
    case 'walkTo':
      return setLegs(scenario, state, action);
    case 'climb':
      return climbed(scenario, state);
    case 'comeDown':
      return climbedDown(state);
    case 'board':
      return isAloft(state) ? state : boarded(state);
    case 'leave':
      return left(state);
    case 'believe':
      return state.belief ? { ...state, belief: { at: action.at, walkedM: state.walkedM } } : state;
    case 'mark':
    case 'strikeOut':
    case 'unstrike':
    case 'guess':
      return write(state, action);
    case 'ruleOut':
    case 'takeBack':
    case 'ruleOutAgain':
      return { ...state, rulings: ruled(state, action) };
    case 'beat':
      return { ...state, beats: [...state.beats, { atTick: state.tick, walkedM: state.walkedM }].slice(-MOST_BEATS) };
    case 'chooseStart':
      return { ...state, startChoice: action.at && { atTick: state.tick, at: action.at } };
    case 'declare':
      return declare(scenario, state);
    case 'declareFix':
      return declareFix(scenario, state);
    case 'watch':
    case 'weaken':
    case 'raiseLineNoise':
    case 'hint':
    case 'holdUp':
      return { ...state, interventions: interventionsWith(state, scenario.tags.length, action) };
    case 'giveUp':
      return { ...state, ending: 'gave-up' };
  }
}

function changeAntenna(scenario: Scenario, state: RunState, antenna: (typeof ANTENNA_IDS)[number]): RunState {
  if (!scenario.kit.antennas.includes(antenna) || antenna === state.hold.antenna || !canChangeTo(scenario, state, antenna)) return state;
  const hold = { ...state.hold, antenna, rollDeg: antennaById(antenna).takenUpRollDeg };
  return { ...state, hold, busyUntilTick: state.tick + ANTENNA_CHANGE_S * TICKS_PER_S };
}

function setLegs(scenario: Scenario, state: RunState, action: Extract<Action, { type: 'walk' | 'walkTo' }>): RunState {
  if (isAloft(state)) return state;
  const paceMPerS = inRange(action.paceMPerS, 0, scenario.limits.paceMPerS);
  if (action.type === 'walk') {
    return { ...state, legs: { courseDeg: wrapBearingDeg(tenth(action.courseDeg)), paceMPerS, until: null } };
  }
  return { ...state, legs: { courseDeg: bearingDeg(state.at, action.at), paceMPerS, until: action.at } };
}

function write(state: RunState, action: Extract<Action, { type: 'mark' | 'strikeOut' | 'unstrike' | 'guess' }>): RunState {
  if (action.type === 'guess') return { ...state, guess: action.at };
  if (action.type === 'mark') {
    const { gainDb, attenuatorDb } = state.controls;
    const believed = state.belief ? { believedAt: state.belief.at } : {};
    const mark = {
      atTick: state.tick,
      at: state.at,
      bearingDeg: state.hold.headingDeg,
      gainDb,
      attenuatorDb,
      struckOut: false,
      ...believed,
    };
    return { ...state, notebook: [...state.notebook, mark] };
  }
  const struckOut = action.type === 'strikeOut';
  return { ...state, notebook: state.notebook.map((mark, i) => (i === action.mark ? { ...mark, struckOut } : mark)) };
}

/** A count is over long before. */
const MOST_BEATS = 120;
/** More of them than any hand makes are not taken: each costs a look round. */
const MOST_RULINGS = 100;

function ruled(state: RunState, action: Extract<Action, { type: 'ruleOut' | 'takeBack' | 'ruleOutAgain' }>): RunState['rulings'] {
  if (action.type === 'ruleOut') {
    if (state.rulings.length >= MOST_RULINGS) return state.rulings;
    const { tick: atTick, at, walkedM } = state;
    return [...state.rulings, { atTick, at, walkedM, around: action.around, takenBack: false }];
  }
  const takenBack = action.type === 'takeBack';
  return state.rulings.map((ruling, i) => (i === action.ruling ? { ...ruling, takenBack } : ruling));
}

function declare(scenario: Scenario, state: RunState): RunState {
  if (taskOf(scenario).kind !== 'find') return state;
  const awayM = scenario.tags.map((_, i) => distanceM(state.at, tagAt(scenario, i, state.tick / TICKS_PER_S)));
  const named = namedTag(taskOf(scenario));
  const offM = named === null ? Math.min(...awayM) : awayM[named]!;
  const { findWithinM } = scenario.limits;
  const right = offM <= findWithinM;
  const nearest = awayM.indexOf(Math.min(...awayM));
  const otherTag = !right && awayM[nearest]! <= findWithinM ? nearest : null;
  const declaration = { atTick: state.tick, at: state.at, right, offM: tenth(offM), otherTag };
  return { ...state, declarations: [...state.declarations, declaration], ending: right ? 'found' : null };
}

/** Fewer lines cross nowhere. */
const LEAST_BEARINGS = 2;

function declareFix(scenario: Scenario, state: RunState): RunState {
  const bearings = state.notebook.flatMap(({ struckOut }, i) => (struckOut ? [] : [i]));
  if (taskOf(scenario).kind !== 'fix' || bearings.length < LEAST_BEARINGS) return state;
  return { ...state, declaredFixes: [...state.declaredFixes, { atTick: state.tick, bearings }], ending: 'fixed' };
}

/** One tick of time: the antenna spins, the legs walk, the clock may run out. */
export function advance(scenario: Scenario, world: World, state: RunState): RunState {
  if (state.ending !== null) return state;
  const tick = state.tick + 1;
  const turned = state.spinDegPerS === 0 ? state.hold : { ...state.hold, headingDeg: spun(state) };
  const moved = walked(world, { ...state, tick, hold: turned });
  const ending = endedByBound(scenario, moved);
  return ending === null ? staged(scenario, moved) : { ...moved, ending };
}

const spun = (state: RunState): number => wrapBearingDeg(Math.round((state.hold.headingDeg + state.spinDegPerS * TICK_S) * 1000) / 1000);

/** Rounded to the millimetre, so that two engines whose sines differ in the last bit walk the same line. */
const millimetre = (m: number): number => Math.round(m * 1000) / 1000;

function walked(world: World, state: RunState): RunState {
  const { legs, at } = state;
  if (legs.paceMPerS === 0 || state.tick < state.busyUntilTick) return state.blocked ? { ...state, blocked: false } : state;
  if (state.vehicle?.aboard) return driven(world, state);
  const courseDeg = legs.until ? bearingDeg(at, legs.until) : legs.courseDeg;
  const [east, north] = [Math.sin(toRad(courseDeg)), Math.cos(toRad(courseDeg))];
  const paceMPerS = legs.paceMPerS * paceFactor(world, at, { east, north });
  const leftM = legs.until ? distanceM(at, legs.until) : Number.POSITIVE_INFINITY;
  const lengthM = Math.min(leftM, paceMPerS * TICK_S);
  const next = { eM: millimetre(at.eM + east * lengthM), nM: millimetre(at.nM + north * lengthM) };
  if (!walkable(world, next) || carriesOff(state, next)) return { ...state, blocked: true, legs: { ...legs, paceMPerS: 0, until: null } };
  const arrived = lengthM >= leftM - 0.001;
  return {
    ...state,
    at: next,
    blocked: false,
    walkedM: millimetre(state.walkedM + lengthM),
    legs: arrived ? { courseDeg, paceMPerS: 0, until: null } : { ...legs, courseDeg },
  };
}
