import type { Action, Entry } from '../run/actions';
import type { Exercise } from '../run/exercise';
import type { Replay } from '../run/replay';
import { type RunState, TICK_S } from '../run/state';
import { advance, step } from '../run/step';
import { toRad } from '../units/angles';
import { bearingDeg, distanceM, type MapPoint } from '../units/frames';
import { paceFactor } from '../world/walking';
import type { World } from '../world/world';

/** The same intent by other hands: each gives the log that they would have left. */
export type OtherHands = { readonly id: string; readonly logOf: (run: Replay, exercise: Exercise) => readonly Entry[] };

/** 10 steps a second: what was done between two steps is done at the later one. */
const tenASecond: OtherHands = {
  id: '10 steps a second',
  logOf: ({ log }) => log.map(({ tick, action }) => ({ tick: tick + (tick % 2), action })),
};

/** Each tick's turning by the antenna's own heading: a finger that draws it round, at 60 steps a second. */
const touch: OtherHands = {
  id: 'touch, 60 steps a second',
  logOf: ({ log, states }) =>
    inTickOrder([...log.filter(({ action }) => action.type !== 'spin'), ...states.flatMap((state, i) => drawnRound(state, states[i + 1]))]),
};

/** Three headings on the way from one tick's to the next, all within the tick that the key turned it in. */
function drawnRound(from: RunState, to: RunState | undefined): readonly Entry[] {
  if (!to || from.hold.headingDeg === to.hold.headingDeg || to.spinDegPerS === 0) return [];
  return [1, 2, 3].map((third) => ({
    tick: from.tick,
    action: { type: 'turn', toDeg: to.hold.headingDeg - (to.spinDegPerS / 20) * (1 - third / 3) },
  }));
}

/** A stick that steers the legs: course and pace at every tick in place of a place to walk to. */
const stick: OtherHands = {
  id: 'stick',
  logOf: (run, exercise) => inTickOrder([...withoutWalkTo(run.log), ...steered(run, exercise)]),
};

const withoutWalkTo = (log: readonly Entry[]): readonly Entry[] => log.filter(({ action }) => action.type !== 'walkTo');

/**
 * Steered by eye: whoever holds the stick sees where the walk has come to, and makes for where it was at the next tick. The log keeps
 * a course to a tenth of a degree; steered blind, a stick would drift metres off a long leg, and that is another walk.
 */
function steered({ log, states }: Replay, { scenario, world }: Exercise): readonly Entry[] {
  const others = withoutWalkTo(log);
  const entries: Entry[] = [];
  let own = states[0]!;
  let next = 0;
  for (let tick = 0; tick + 1 < states.length; tick++) {
    for (; next < others.length && others[next]!.tick <= tick; next++) own = step(scenario, own, others[next]!.action);
    const action = toward(own, states[tick + 1]!.at, world);
    if (action.paceMPerS > 0 || own.legs.paceMPerS > 0) {
      entries.push({ tick, action });
      own = step(scenario, own, action);
    }
    own = advance(scenario, world, own);
  }
  return entries;
}

/** Nearer than this one is there, metres. */
const THERE_M = 0.005;

/** Course and pace that lead to a place within one tick, as far as the ground lets one; a pace of 0 when there. */
function toward({ at, legs }: RunState, to: MapPoint, world: World): Extract<Action, { type: 'walk' }> {
  const leftM = distanceM(at, to);
  if (leftM < THERE_M) return { type: 'walk', courseDeg: legs.courseDeg, paceMPerS: 0 };
  const courseDeg = bearingDeg(at, to);
  const factor = paceFactor(world, at, { east: Math.sin(toRad(courseDeg)), north: Math.cos(toRad(courseDeg)) });
  return { type: 'walk', courseDeg, paceMPerS: leftM / (TICK_S * factor) };
}

/** Stable: what was drawn or steered comes after what was done in the same tick, except that marks and words come last. */
const inTickOrder = (log: readonly Entry[]): readonly Entry[] =>
  [...log].sort((a, b) => a.tick - b.tick || Number(isWord(a)) - Number(isWord(b)));

const isWord = ({ action }: Entry): boolean => action.type === 'mark' || action.type === 'declare' || action.type === 'giveUp';

export const OTHER_HANDS: readonly OtherHands[] = [tenASecond, touch, stick];
