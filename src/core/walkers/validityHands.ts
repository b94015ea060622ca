import type { Entry } from '../run/actions';
import type { Replay } from '../run/replay';
import type { RunState } from '../run/state';
import { bearingDeg, distanceM, stepAlong } from '../units/frames';

/** The same intent by other hands: each gives the log that they would have left. */
export type OtherHands = { readonly id: string; readonly logOf: (run: Replay) => readonly Entry[] };

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
  logOf: ({ log, states }) => inTickOrder([...log.filter(({ action }) => action.type !== 'walkTo'), ...steered(states)]),
};

/**
 * Steered by eye: whoever holds the stick sees where the walk has come to, so the course is set anew from there. The log keeps a
 * course to a tenth of a degree; a stick that was set once and let be would end metres off a long leg, which is another walk.
 */
function steered(states: readonly RunState[]): readonly Entry[] {
  const entries: Entry[] = [];
  let own = states[0]!.at;
  let walks = false;
  for (let i = 0; i + 1 < states.length; i++) {
    const [from, to] = [states[i]!, states[i + 1]!];
    const steppedM = distanceM(from.at, to.at);
    if (steppedM === 0) {
      if (walks) entries.push({ tick: from.tick, action: { type: 'walk', courseDeg: to.legs.courseDeg, paceMPerS: 0 } });
      walks = false;
      continue;
    }
    walks = true;
    const courseDeg = Math.round(bearingDeg(own, to.at) * 10) / 10;
    const fullM = distanceM(states[i - 1]?.at ?? from.at, from.at);
    const last = to.legs.paceMPerS === 0;
    const paceMPerS = paceOf(states, i) * (last && fullM > 0 ? Math.min(1, distanceM(own, to.at) / fullM) : 1);
    entries.push({ tick: from.tick, action: { type: 'walk', courseDeg, paceMPerS } });
    own = stepAlong(own, courseDeg, last ? distanceM(own, to.at) : steppedM);
  }
  return entries;
}

/** The pace that the legs had in a step; the step that arrives ends with none. */
const paceOf = (states: readonly RunState[], i: number): number => states[i + 1]!.legs.paceMPerS || states[i]!.legs.paceMPerS;

/** Stable: what was drawn or steered comes after what was done in the same tick, except that marks and words come last. */
const inTickOrder = (log: readonly Entry[]): readonly Entry[] =>
  [...log].sort((a, b) => a.tick - b.tick || Number(isWord(a)) - Number(isWord(b)));

const isWord = ({ action }: Entry): boolean => action.type === 'mark' || action.type === 'declare' || action.type === 'giveUp';

export const OTHER_HANDS: readonly OtherHands[] = [tenASecond, touch, stick];
